// Strict JSON forms for plain structs: one description of a struct's fields serves reading and
// writing, so the two cannot drift apart.
//
// A struct S takes part through a function template found beside it:
//   template <class Io> void fields(Io& io, Of<S> auto& s) {
//     io.required("id", s.id);          // must be there; always written
//     io.defaulted("status", s.status); // may be missing, then stays as it is; always written
//     io.optional("when", s.when);      // may be missing; written unless empty
//     io.text("note", s.note);          // an optional free text, larger than a name may be
//   }
// Reading collects every problem with its JSON Pointer (RFC 6901) instead of stopping at the
// first, and refuses fields nobody asked for. Include only from sources that own a JSON form.
#pragma once

#include <algorithm>
#include <concepts>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "indexer/enum_names.hpp"
#include "indexer/json_limits.hpp"
#include "indexer/quantities.hpp"
#include "indexer/result.hpp"

namespace shoplore {

using Json = nlohmann::ordered_json;

template <class S, class T>
concept Of = std::same_as<std::remove_const_t<S>, T>;

// One token of a JSON Pointer, escaped by RFC 6901 section 3.
[[nodiscard]] std::string pointer_token(std::string_view key);

// Parses a text of at most max_bytes; a syntax error or invalid UTF-8 names the byte.
[[nodiscard]] Result<Json> parse_json(std::string_view text, std::size_t max_bytes);

// Parses a text that came with the program and is tested: no limit, fields not looked at twice,
// twice as fast.
[[nodiscard]] Result<Json> parse_shipped_json(std::string_view text);

// What is wrong with this string as a value of at most max_bytes, or empty. Control characters
// other than tab and line ends are refused: they would reach a terminal.
[[nodiscard]] std::string string_fault(std::string_view text, std::size_t max_bytes);

class FieldReader;
class FieldWriter;

// A value that is not an object has a form of its own: these two, found beside its type.
//   void read_form(const Json& json, const std::string& place, S& target, std::vector<Problem>&);
//   Json written_form(const S& value);
template <class T>
concept HasOwnForm = requires(const T& value) {
  { written_form(value) } -> std::same_as<Json>;
};

template <class T>
concept HasFields = requires(FieldReader& io, T& value) {
  fields(io, value);
};

class FieldReader {
 public:
  FieldReader(const Json& value, std::string place, std::vector<Problem>& problems)
      : value_(value), place_(std::move(place)), problems_(problems) {
    if (!value_.is_object()) problem(place_, "expected an object");
  }

  template <class T>
  void required(std::string_view key, T& target) {
    if (const Json* found = find(key)) return read(*found, place_of(key), target, kMaxNameBytes);
    if (value_.is_object()) problem(place_of(key), "is missing");
  }
  template <class T>
  void defaulted(std::string_view key, T& target) {
    optional(key, target);
  }
  template <class T>
  void optional(std::string_view key, T& target) {
    if (const Json* found = find(key)) read(*found, place_of(key), target, kMaxNameBytes);
  }
  template <class T>
  void text(std::string_view key, T& target) {
    if (const Json* found = find(key)) read(*found, place_of(key), target, kMaxTextBytes);
  }

  // Call after the last field: names every field that nobody asked for.
  void refuse_unknown() {
    if (!value_.is_object()) return;
    for (const auto& [key, unused] : value_.items()) {
      if (std::find(known_.begin(), known_.end(), key) == known_.end()) {
        problem(place_of(key), "is not a known field");
      }
    }
  }

 private:
  const Json* find(std::string_view key) {
    known_.emplace_back(key);
    if (!value_.is_object()) return nullptr;
    const auto found = value_.find(std::string(key));
    return found == value_.end() ? nullptr : &*found;
  }
  std::string place_of(std::string_view key) const { return place_ + "/" + pointer_token(key); }
  void problem(std::string place, std::string expected) {
    problems_.push_back({std::move(place), std::move(expected)});
  }

  void read(const Json& json, const std::string& place, std::string& target, std::size_t limit) {
    if (!json.is_string()) return problem(place, "expected a text");
    const auto& text = json.get_ref<const std::string&>();
    if (std::string fault = string_fault(text, limit); !fault.empty()) return problem(place, fault);
    target = text;
  }
  void read(const Json& json, const std::string& place, double& target, std::size_t) {
    if (!json.is_number()) return problem(place, "expected a number");
    target = json.get<double>();
  }
  void read(const Json& json, const std::string& place, std::int64_t& target, std::size_t) {
    const bool too_large = json.is_number_unsigned() && json.get<std::uint64_t>() > INT64_MAX;
    if (!json.is_number_integer() || too_large) return problem(place, "expected a whole number");
    target = json.get<std::int64_t>();
  }
  void read(const Json& json, const std::string& place, int& target, std::size_t limit) {
    std::int64_t wide = target;
    read(json, place, wide, limit);
    if (wide < INT32_MIN || wide > INT32_MAX) return problem(place, "is out of range");
    target = static_cast<int>(wide);
  }
  void read(const Json& json, const std::string& place, Kilometres& target, std::size_t limit) {
    read(json, place, target.value, limit);
  }
  void read(const Json& json, const std::string& place, Minutes& target, std::size_t limit) {
    read(json, place, target.value, limit);
  }
  void read(const Json& json, const std::string& place, Date& target, std::size_t) {
    if (!json.is_string()) return problem(place, "expected a date as YYYY-MM-DD");
    const auto date = parse_date(json.get_ref<const std::string&>());
    if (!date) return problem(place, date.error().message);
    target = *date;
  }
  template <class Enum>
  requires std::is_enum_v<Enum>
  void read(const Json& json, const std::string& place, Enum& target, std::size_t) {
    const auto value =
        json.is_string() ? enum_from_name<Enum>(json.get_ref<const std::string&>()) : std::nullopt;
    if (!value) return problem(place, "expected " + expected_names<Enum>());
    target = *value;
  }
  template <class T>
  void read(const Json& json, const std::string& place, std::optional<T>& target,
            std::size_t limit) {
    T value{};
    read(json, place, value, limit);
    target = std::move(value);
  }
  template <class T>
  void read(const Json& json, const std::string& place, std::vector<T>& target, std::size_t limit) {
    if (!json.is_array()) return problem(place, "expected a list");
    if (json.size() > kMaxListEntries) {
      return problem(place, "has more than " + std::to_string(kMaxListEntries) + " entries");
    }
    target.clear();
    for (std::size_t i = 0; i < json.size(); ++i) {
      read(json[i], place + "/" + std::to_string(i), target.emplace_back(), limit);
    }
  }
  void read(const Json& json, const std::string& place, std::map<std::string, std::string>& target,
            std::size_t limit) {
    if (!json.is_object()) return problem(place, "expected an object of texts");
    if (json.size() > kMaxListEntries) return problem(place, "has too many entries");
    for (const auto& [key, value] : json.items()) {
      const std::string here = place + "/" + pointer_token(key);
      const std::string fault = key.empty() ? "a name is empty" : string_fault(key, limit);
      if (!fault.empty()) problem(here, fault);
      read(value, here, target[key], limit);
    }
  }
  template <HasOwnForm T>
  void read(const Json& json, const std::string& place, T& target, std::size_t) {
    read_form(json, place, target, problems_);
  }
  template <HasFields T>
  void read(const Json& json, const std::string& place, T& target, std::size_t) {
    FieldReader nested(json, place, problems_);
    fields(nested, target);
    nested.refuse_unknown();
  }

  const Json& value_;
  std::string place_;
  std::vector<Problem>& problems_;
  std::vector<std::string> known_;
};

class FieldWriter {
 public:
  template <class T>
  void required(std::string_view key, const T& value) {
    object_[std::string(key)] = form(value);
  }
  template <class T>
  void defaulted(std::string_view key, const T& value) {
    required(key, value);
  }
  template <class T>
  void optional(std::string_view key, const T& value) {
    if (is_empty(value)) return;
    Json written = form(value);
    // A struct without a field set says nothing; an optional one that is there says it was asked.
    const bool says_nothing = written.is_object() && written.empty() && !requires_value<T>;
    if (!says_nothing) object_[std::string(key)] = std::move(written);
  }
  template <class T>
  void text(std::string_view key, const T& value) {
    optional(key, value);
  }
  [[nodiscard]] Json take() { return std::move(object_); }

 private:
  template <class T>
  static constexpr bool requires_value = requires(const T& value) {
    value.has_value();
  };

  template <class T>
  static bool is_empty(const T& value) {
    if constexpr (requires { value.has_value(); })
      return !value.has_value();
    else if constexpr (requires { value.empty(); })
      return value.empty();
    else
      return false;
  }
  template <class T>
  static Json form(const T& value) {
    if constexpr (std::is_enum_v<T>)
      return Json(name_of(value));
    else if constexpr (HasOwnForm<T>)
      return written_form(value);
    else if constexpr (std::is_same_v<T, Date>)
      return Json(format_date(value));
    else if constexpr (std::is_same_v<T, Kilometres> || std::is_same_v<T, Minutes>)
      return Json(value.value);
    else if constexpr (requires { value.has_value(); })
      return form(*value);
    else if constexpr (requires(FieldWriter & io) { fields(io, value); }) {
      FieldWriter nested;
      fields(nested, value);
      return nested.take();
    } else if constexpr (requires { typename T::mapped_type; } ||
                         std::is_convertible_v<T, std::string_view>) {
      return Json(value);
    } else if constexpr (requires { value.begin(); }) {
      Json list = Json::array();
      for (const auto& each : value) list.push_back(form(each));
      return list;
    } else {
      return Json(value);
    }
  }
  Json object_ = Json::object();
};

// The struct's JSON object.
template <class T>
[[nodiscard]] Json json_of(const T& value) {
  FieldWriter io;
  fields(io, value);
  return io.take();
}

// Reads a whole struct; every problem found is listed in the error. `what` names the whole.
template <class T>
[[nodiscard]] Result<T> struct_from_json(const Json& json, std::string_view what) {
  std::vector<Problem> problems;
  T value{};
  FieldReader io(json, "", problems);
  fields(io, value);
  io.refuse_unknown();
  if (problems.empty()) return value;
  return tl::make_unexpected(Error{ErrorCode::kInvalidInput, problems.front().place,
                                   std::string(what) + " is not as expected", problems});
}

}  // namespace shoplore
