#include "api/cli/verbs.hpp"

namespace shoplore {

namespace {

constexpr std::chrono::milliseconds kPatience{10'000};

}  // namespace

Result<Records> open_in_step(Session& session) {
  auto records = Records::open(session.folder);
  if (!records) return records;
  const auto followed = records->follow(kPatience);
  if (followed && followed->followed == Followed::kRebuilt) {
    session.err << "shoplore: the index was built anew from the records, because "
                << followed->why_rebuilt << "\n";
  }
  if (!followed && followed.error().code == ErrorCode::kBusy) {
    session.err << "shoplore: another program is writing the index; this may be a moment behind\n";
  } else if (!followed) {
    return fail(followed.error());
  }
  return records;
}

Result<ExitCode> run(const HelpText& options, Session& session) {
  session.out << options.text;
  return ExitCode::kAnswered;
}

}  // namespace shoplore
