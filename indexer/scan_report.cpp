#include "indexer/scan_report.hpp"

#include <algorithm>
#include <optional>

#include "indexer/no_codes_reader.hpp"
#include "indexer/report_line.hpp"

namespace shoplore {
namespace {

using Lines = std::vector<ReportLine>;

bool is_gap(const ReportLine& line) {
  return line.kind == LineKind::kBlank || line.kind == LineKind::kRule;
}

// The next line from i on that is neither blank nor dashes; lines.size() when none is.
std::size_t next_said(const Lines& lines, std::size_t i) {
  while (i < lines.size() && is_gap(lines[i])) ++i;
  return i;
}

bool is_code(const Lines& lines, std::size_t i) {
  return i < lines.size() && lines[i].kind == LineKind::kCode;
}

// Whether the line opens or goes on with a report, whatever stands around it.
bool is_of_report(LineKind kind) {
  return kind == LineKind::kCode || kind == LineKind::kHeading ||
         kind == LineKind::kStatusHeading || kind == LineKind::kNoFaults;
}

bool heads_codes(const Lines& lines, std::size_t i) {
  if (lines[i].kind == LineKind::kNoFaults) return !lines[i].module.empty();
  if (lines[i].kind != LineKind::kHeading) return false;
  std::size_t next = next_said(lines, i + 1);
  if (next < lines.size() && lines[next].kind == LineKind::kStatusHeading) {
    next = next_said(lines, next + 1);
  }
  if (next >= lines.size()) return false;
  if (lines[next].kind == LineKind::kNoFaults) return true;
  // "Engine" above "P0299 flat uphill" is a note.
  const bool tabled = lines[next].status || !lines[next].failure_type.empty();
  return lines[next].kind == LineKind::kCode && (!lines[i].plain_module || tabled);
}

bool heads_details(const Lines& lines, std::size_t i) {
  if (!is_code(lines, i) || i + 1 >= lines.size()) return false;
  const bool values = lines[i + 1].kind == LineKind::kFreezeValues;
  const bool deeper = lines[i + 1].indent > lines[i].indent;
  const bool more = i + 2 < lines.size() && lines[i + 2].kind == LineKind::kFreezeValues;
  return lines[i + 1].kind == LineKind::kFreezeHead || lines[i + 1].kind == LineKind::kDetail ||
         (values && (more || deeper));
}

bool is_report(const Lines& lines) {
  std::size_t codes = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (is_code(lines, i) && ++codes == 3) return true;
    if (is_code(lines, i) && is_code(lines, next_said(lines, i + 1))) return true;
    if (heads_codes(lines, i) || heads_details(lines, i)) return true;
  }
  return false;
}

class ReportReader {
 public:
  ReportReader(NotePage& page, const Lines& lines) : page_(page), lines_(lines) {}

  void read() {
    const auto first = std::find_if(lines_.begin(), lines_.end(),
                                    [](const ReportLine& l) { return is_of_report(l.kind); });
    for (auto line = lines_.begin(); line != first; ++line) {
      if (line->kind == LineKind::kHeader || line->kind == LineKind::kRule) claim(*line);
    }
    for (auto i = static_cast<std::size_t>(first - lines_.begin()); i < lines_.size(); ++i) {
      read_line(i);
    }
    keep();
  }

 private:
  void read_line(std::size_t i) {
    const ReportLine& line = lines_[i];
    switch (line.kind) {
      case LineKind::kCode:
        return add_code(line);
      case LineKind::kHeading:
      case LineKind::kStatusHeading:
      case LineKind::kNoFaults:
        return add_heading(line);
      case LineKind::kFreezeHead:
        frame_open_ = true;
        return add_values(line);
      case LineKind::kFreezeValues:
        return add_values(line);
      case LineKind::kDetail:
        return add_detail(line);
      case LineKind::kHeader:
      case LineKind::kRule:
        return claim(line);
      case LineKind::kBlank:
        parted_ = true;
        frame_open_ = frame_open_ && i > 0 && lines_[i - 1].kind == LineKind::kFreezeHead;
        return;
      case LineKind::kOther:
        return add_other(i);
    }
  }

  void claim(const ReportLine& line) { page_.claim(page_.tokens_at(line.span)); }

  void begin_code() {
    most_below_ = std::max(most_below_, below_);
    below_ = 0;
    parted_ = frame_open_ = false;
  }

  void add_code(const ReportLine& line) {
    begin_code();
    claim(line);
    indent_ = line.indent;
    RecognisedItem item = recognised_item(ItemKind::kCode, line.code, line.code_span);
    Code& code = item.code.emplace();
    code.code = line.code;
    code.module = line.module.empty() ? module_ : line.module;
    code.failure_type = line.failure_type;
    code.seen = line.seen;
    code.status = line.status.value_or(status_.value_or(CodeStatus::kStored));
    items_.push_back(std::move(item));
    failed_.push_back(line.nothing_failed && !line.status ? 0 : 1);
    open_ = true;
  }

  void add_heading(const ReportLine& line) {
    begin_code();
    open_ = false;
    claim(line);
    if (line.kind == LineKind::kStatusHeading) {
      status_ = line.status;
      return;
    }
    if (!line.module.empty()) module_ = line.module;
    if (!line.module.empty()) status_.reset();
    if (line.kind == LineKind::kNoFaults && !no_faults_) no_faults_ = line.span;
  }

  void add_values(const ReportLine& line) {
    if (!open_ || (parted_ && !frame_open_)) return;
    claim(line);
    auto& frame = items_.back().code->freeze_frame;
    frame.insert(frame.end(), line.freeze_frame.begin(), line.freeze_frame.end());
  }

  void add_detail(const ReportLine& line) {
    if (!open_ || parted_) return;
    claim(line);
    Code& code = *items_.back().code;
    if (line.status) code.status = *line.status;
    if (code.failure_type.empty()) code.failure_type = line.failure_type;
    if (line.nothing_failed) failed_.back() = 0;
  }

  // A line of words below a code.
  void add_other(std::size_t i) {
    if (!open_ || parted_) return;
    const bool deeper = lines_[i].indent > indent_;
    const bool taken = deeper || frame_open_ || goes_on_after(i) || below_ < most_below_;
    if (!taken) return void(open_ = false);
    if (!deeper && !frame_open_) ++below_;
    claim(lines_[i]);
  }

  // Whether the report goes on below this line, without a blank line between.
  bool goes_on_after(std::size_t i) const {
    while (i < lines_.size() && lines_[i].kind == LineKind::kOther) ++i;
    return i < lines_.size() && lines_[i].kind != LineKind::kBlank &&
           lines_[i].kind != LineKind::kHeader;
  }

  void keep() {
    bool any = false;
    for (std::size_t i = 0; i < items_.size(); ++i) {
      if (failed_[i] == 0) continue;
      any = true;
      page_.keep(std::move(items_[i]));
    }
    if (any || !no_faults_) return;
    page_.keep(recognised_item(ItemKind::kScanned, std::string(kNoCodes), *no_faults_));
  }

  NotePage& page_;
  const Lines& lines_;
  std::string module_;
  std::optional<CodeStatus> status_;
  std::vector<RecognisedItem> items_;
  std::vector<char> failed_;                // by item: whether anything failed
  std::optional<Span> no_faults_;           // the first line that says so
  bool open_ = false;                       // a code is above that lines may belong to
  bool parted_ = false;                     // by a blank line
  bool frame_open_ = false;                 // below a line "freeze frame"
  std::size_t indent_ = 0;                  // of the code above
  std::size_t below_ = 0, most_below_ = 0;  // lines of words below a code, not set in
};

}  // namespace

void read_scan_report(NotePage& page) {
  if (page.text().find('\n') == std::string_view::npos) return;
  const Lines lines = report_lines(page.text());
  if (is_report(lines)) ReportReader(page, lines).read();
}

}  // namespace shoplore
