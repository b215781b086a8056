// Reads a scan report of many lines, pasted into a note from any tool.
//
// The text holds a report when it has two code lines directly below each other, three code lines in
// all, a control unit's heading right above a code line or "no faults", or a code line right above
// a freeze frame (the lines are report_line.hpp's). Otherwise nothing is read, and a code beside
// ordinary words stays code_reader.hpp's.
//
// In a report, from its first line on:
// - A code line gives a code with the control unit and status of the headings above it, unless the
//   line says them itself. Its description is read past: words such as "underboost" or "short to
//   ground" there are the tool's, neither symptoms nor repairs.
// - Freeze-frame values belong to the code above them, when no blank line parts them or a line
//   "freeze frame" leads them; they are neither mileage nor readings.
// - Other lines below a code, up to a blank line, are its description when they are set in deeper
//   than the code, or when the report goes on below them. After the last code as many are taken as
//   the codes before had.
// - "No faults" lines are an item of kind scanned when the whole report has no code.
// A code whose status byte says that nothing failed is read past. Above the report, lines such as
// "Tool: ..." and "Date: ..." are read past; a line "Odometer: 142000 km" there is the mileage.
// Lines with several codes are code_reader.hpp's. Pure functions, any thread; linear.
#pragma once

#include "indexer/note_page.hpp"

namespace shoplore {

// Claims what it reads.
void read_scan_report(NotePage& page);

}  // namespace shoplore
