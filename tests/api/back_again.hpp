// The story that both ways in must tell alike: a vehicle repaired here comes back.
//
// A turbocharger was put in for lack of power; the same vehicle is booked in again with it, and
// turns out to have a seized linkage.
#pragma once

#include <string>

namespace shoplore::testing {

inline const std::string kPlate = "QX19 ZZT";

// Closed on 2026-03-04 at 120,000 km.
inline const std::string kTurboPutIn =
    R"({"ref":"turbo-1","state":"closed","opened":"2026-03-02","closed":"2026-03-04",)"
    R"("identity":{"plate":"QX19 ZZT"},"vehicle":{"make":"Brackwater","model":"Tidal",)"
    R"("engine_family":"BW16D","mileage_km":120000},"job_number":"4711",)"
    R"("symptoms":[{"id":"lack_of_power","state":"present"}],"scanned":"yes",)"
    R"("codes":[{"code":"P0299"}],"cause":{"component":"turbocharger","failure":"worn"},)"
    R"("correction":{"fixes":[{"action":"replace","component":"turbocharger"}]}})";

// Booked in on 2026-05-03 at 124,100 km.
inline const std::string kBackAgain =
    R"({"ref":"back-1","state":"open","opened":"2026-05-03","identity":{"plate":"QX19 ZZT"},)"
    R"("vehicle":{"make":"Brackwater","model":"Tidal","engine_family":"BW16D",)"
    R"("mileage_km":124100},"symptoms":[{"id":"lack_of_power","state":"present"}]})";

// What it turned out to be.
inline const std::string kFound =
    R"("closed":"2026-05-05","cause":{"component":"wastegate_linkage","failure":"seized_open",)"
    R"("proof":"seen"},"correction":{"fixes":[{"action":"replace",)"
    R"("component":"wastegate_linkage"}]})";

}  // namespace shoplore::testing
