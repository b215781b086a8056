#include "indexer/words_to_keep.hpp"

#include "indexer/folded_text.hpp"

namespace shoplore {
namespace {

using Words = std::set<std::string_view>;

const Words& units() {
  static const Words words{
      "V",    "MV",  "KV",   "A",    "MA",  "W",    "KW",   "WH",    "KWH", "AH",  "K",    "KM",
      "KMS",  "KPH", "KMH",  "MPH",  "MI",  "MLS",  "MILE", "MILES", "MM",  "CM",  "M",    "NM",
      "N",    "LB",  "LBS",  "FT",   "IN",  "PSI",  "KPA",  "MPA",   "HPA", "BAR", "BARS", "MBAR",
      "RPM",  "HZ",  "KHZ",  "MHZ",  "MS",  "US",   "SEC",  "SECS",  "S",   "MIN", "MINS", "H",
      "HR",   "HRS", "C",    "F",    "DEG", "DEGC", "KG",   "G",     "MG",  "L",   "ML",   "CC",
      "LTR",  "OHM", "OHMS", "KOHM", "DB",  "PPM",  "HP",   "PS",    "BHP", "VDC", "VAC",  "AMP",
      "AMPS", "PCT", "UM",   "DAYS", "WKS", "YRS"};
  return words;
}

const Words& common_words() {
  static const Words words{
      "AT",  "TO",  "BY",  "ON",  "IS",  "OF",  "OR",  "UP",  "GO",  "AS",  "SO",  "AN",
      "IF",  "IT",  "WE",  "NO",  "OK",  "THE", "AND", "FOR", "BUT", "NOT", "HAS", "HAD",
      "WAS", "ARE", "NEW", "OLD", "OUT", "OFF", "ALL", "ANY", "ONE", "TWO", "SIX", "TEN",
      "PER", "TRY", "GOT", "GET", "SET", "RUN", "VAN", "CAR", "BUS", "CAB", "JOB", "INV",
      "REF", "ODO", "AGO", "LOW", "HOT", "WET", "DRY", "BAD", "TOP", "ROW", "END", "VIA",
      "MAX", "MIN", "AVG", "FIG", "SEE", "TYP", "BAY", "NUT", "KIT", "OIL", "JAN", "FEB",
      "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"};
  return words;
}

const Words& abbreviations() {
  static const Words words{
      "ABS", "AC",  "ADC", "AFM", "ALT", "API", "ATF", "AWD", "BAT", "BCM",  "BDC", "BTDC", "BUS",
      "CAM", "CAN", "CAT", "CKP", "CMP", "CNG", "CPS", "CTS", "CVT", "CYL",  "DC",  "DCT",  "DIN",
      "DOT", "DPF", "DTC", "ECM", "ECT", "ECU", "EGR", "EGT", "EPB", "EPS",  "ESP", "EV",   "FAN",
      "FR",  "FWD", "GAS", "GDI", "GPF", "GPS", "HP",  "HPP", "HV",  "HVAC", "IAC", "IAT",  "INJ",
      "ISO", "KEY", "LED", "LH",  "LIN", "LP",  "LPG", "LV",  "MAF", "MAP",  "MIL", "MOT",  "NOX",
      "NS",  "NSF", "NSR", "NTC", "OBD", "OEM", "OS",  "OSF", "OSR", "PCM",  "PCV", "PID",  "PIN",
      "POT", "PTC", "PTO", "PWM", "REV", "RH",  "RR",  "RWD", "SAE", "SAS",  "SCR", "SOC",  "SOH",
      "SRS", "SRV", "SSP", "TCC", "TCM", "TCS", "TCU", "TDC", "TFT", "TPS",  "TPM", "USB",  "VCM",
      "VGT", "VIN", "VNT", "VSS", "VVT", "WOT", "XL"};
  return words;
}

}  // namespace

WordsToKeep::WordsToKeep(const std::vector<std::string>& entries) {
  for (const std::string& entry : entries) add(entry);
}

void WordsToKeep::add(std::string_view entry) {
  const FoldedText folded = fold(entry);
  for (const Run& run : runs_of(folded)) words_.insert(run.word);
  entries_.insert(letters_and_digits(entry));
}

bool WordsToKeep::has_entry(std::string_view entry) const {
  return entries_.contains(letters_and_digits(entry));
}

bool WordsToKeep::has_word(std::string_view folded) const {
  return words_.contains(folded) || entries_.contains(folded) || is_unit(folded) ||
         is_common_word(folded) || abbreviations().contains(folded);
}

bool is_unit(std::string_view folded) {
  return units().contains(folded);
}

bool is_common_word(std::string_view folded) {
  return common_words().contains(folded);
}

}  // namespace shoplore
