// Published life data for the outside checks, each with its source. Censored lives are whole at
// their last age.
#pragma once

#include <cstdint>
#include <set>
#include <vector>

#include "query/lives/lives.hpp"
#include "query/lives/mean_cumulative.hpp"

namespace shoplore::testing {

struct Count {
  double time;
  std::uint64_t failed, whole;
};

inline std::vector<Life> lives_of(const std::vector<Count>& counts) {
  std::vector<Life> lives;
  for (const Count& count : counts) {
    lives.insert(lives.end(), count.failed, Life{count.time, true});
    lives.insert(lives.end(), count.whole, Life{count.time, false});
  }
  return lives;
}

// The same lives, censored where they failed in another mode than at these ages.
inline std::vector<Life> failing_only_at(std::vector<Life> lives, const std::set<double>& ages) {
  for (Life& life : lives) life.failed = life.failed && ages.contains(life.exit);
  return lives;
}

// Weeks to relapse under 6-MP and placebo: Freireich et al., Blood 21 (1963) 699-716.
inline const std::vector<Count> kFreireich6Mp{
    {6, 3, 1},  {7, 1, 0},  {9, 0, 1},  {10, 1, 1}, {11, 0, 1}, {13, 1, 0}, {16, 1, 0}, {17, 0, 1},
    {19, 0, 1}, {20, 0, 1}, {22, 1, 0}, {23, 1, 0}, {25, 0, 1}, {32, 0, 2}, {34, 0, 1}, {35, 0, 1}};

inline const std::vector<Count> kFreireichPlacebo{{1, 2, 0},  {2, 2, 0},  {3, 1, 0},  {4, 2, 0},
                                                  {5, 2, 0},  {8, 4, 0},  {11, 2, 0}, {12, 2, 0},
                                                  {15, 1, 0}, {17, 1, 0}, {22, 1, 0}, {23, 1, 0}};

// Kilometres of shock absorbers, 38 units: O'Connor, Practical Reliability Engineering, 2nd ed.
// (1985); Meeker & Escobar, Statistical Methods for Reliability Data (1998), Table C.2.
inline const std::vector<Count> kShockAbsorber{
    {6700, 1, 0},  {6950, 0, 1},  {7820, 0, 1},  {8790, 0, 1},  {9120, 1, 0},  {9660, 0, 1},
    {9820, 0, 1},  {11310, 0, 1}, {11690, 0, 1}, {11850, 0, 1}, {11880, 0, 1}, {12140, 0, 1},
    {12200, 1, 0}, {12870, 0, 1}, {13150, 1, 0}, {13330, 0, 1}, {13470, 0, 1}, {14040, 0, 1},
    {14300, 1, 0}, {17520, 1, 0}, {17540, 0, 1}, {17890, 0, 1}, {18450, 0, 1}, {18960, 0, 1},
    {18980, 0, 1}, {19410, 0, 1}, {20100, 1, 1}, {20150, 0, 1}, {20320, 0, 1}, {20900, 1, 0},
    {22700, 1, 0}, {23490, 0, 1}, {26510, 1, 0}, {27410, 0, 1}, {27490, 1, 0}, {27890, 0, 1},
    {28100, 0, 1}};

// At these the mode was 1; at the other failures, 2.
inline const std::set<double> kShockAbsorberMode1{6700, 12200, 14300, 17520, 22700, 26510, 27490};
inline const std::set<double> kShockAbsorberMode2{9120, 13150, 20100, 20900};

// Hours, test ended at 500: NIST/SEMATECH e-Handbook of Statistical Methods, 8.2.2.1 and 8.4.1.3.
inline const std::vector<Count> kNistWeibull{{54, 1, 0},  {187, 1, 0}, {216, 1, 0}, {240, 1, 0},
                                             {244, 1, 0}, {335, 1, 0}, {361, 1, 0}, {373, 1, 0},
                                             {375, 1, 0}, {386, 1, 0}, {500, 0, 10}};

// Hours of fans of diesel generators, 70 units: Nelson, Applied Life Data Analysis (1982).
inline const std::vector<Count> kDieselFan{
    {450, 1, 0},  {460, 0, 1},  {1150, 2, 0}, {1560, 0, 1},  {1600, 1, 0}, {1660, 0, 1},
    {1850, 0, 5}, {2030, 0, 3}, {2070, 2, 0}, {2080, 1, 0},  {2200, 0, 1}, {3000, 0, 4},
    {3100, 1, 0}, {3200, 0, 1}, {3450, 1, 0}, {3750, 0, 2},  {4150, 0, 4}, {4300, 0, 4},
    {4600, 1, 0}, {4850, 0, 4}, {5000, 0, 3}, {6100, 1, 3},  {6300, 0, 1}, {6450, 0, 2},
    {6700, 0, 1}, {7450, 0, 1}, {7800, 0, 2}, {8100, 0, 2},  {8200, 0, 1}, {8500, 0, 3},
    {8750, 1, 2}, {9400, 0, 1}, {9900, 0, 1}, {10100, 0, 3}, {11500, 0, 1}};

// Hours of bearing cages, 1703 units: Abernethy et al., Weibull Analysis Handbook,
// AFWAL-TR-83-2079 (1983); Meeker & Escobar (1998), ch. 8.
inline const std::vector<Count> kBearingCage{
    {50, 0, 288},   {150, 0, 148}, {230, 1, 0},   {250, 0, 124}, {334, 1, 0},
    {350, 0, 111},  {423, 1, 0},   {450, 0, 106}, {550, 0, 99},  {650, 0, 110},
    {750, 0, 114},  {850, 0, 119}, {950, 0, 127}, {990, 1, 0},   {1009, 1, 0},
    {1050, 0, 123}, {1150, 0, 93}, {1250, 0, 47}, {1350, 0, 41}, {1450, 0, 27},
    {1510, 1, 0},   {1550, 0, 11}, {1650, 0, 6},  {1850, 0, 1},  {2050, 0, 2}};

// Thousand miles of locomotive controls, 96 units: Nelson (1982); Meeker & Escobar (1998).
inline const std::vector<Count> kLocomotiveControl{
    {22.5, 1, 0},  {37.5, 1, 0},  {46, 1, 0},   {48.5, 1, 0},  {51.5, 1, 0},  {53, 1, 0},
    {54.5, 1, 0},  {57.5, 1, 0},  {66.5, 1, 0}, {68, 1, 0},    {69.5, 1, 0},  {76.5, 1, 0},
    {77, 1, 0},    {78.5, 1, 0},  {80, 1, 0},   {81.5, 1, 0},  {82, 1, 0},    {83, 1, 0},
    {84, 1, 0},    {91.5, 1, 0},  {93.5, 1, 0}, {102.5, 1, 0}, {107, 1, 0},   {108.5, 1, 0},
    {112.5, 1, 0}, {113.5, 1, 0}, {116, 1, 0},  {117, 1, 0},   {118.5, 1, 0}, {119, 1, 0},
    {120, 1, 0},   {122.5, 1, 0}, {123, 1, 0},  {127.5, 1, 0}, {131, 1, 0},   {132.5, 1, 0},
    {134, 1, 0},   {135, 0, 59}};

// Million revolutions of ball bearings, all run to failure: Lieblein & Zelen, J. Research NBS 57
// (1956) 273.
inline const std::vector<Count> kBallBearing{
    {17.88, 1, 0},  {28.92, 1, 0},  {33, 1, 0},     {41.52, 1, 0}, {42.12, 1, 0}, {45.6, 1, 0},
    {48.4, 1, 0},   {51.84, 1, 0},  {51.96, 1, 0},  {54.12, 1, 0}, {55.56, 1, 0}, {67.8, 1, 0},
    {68.64, 2, 0},  {68.88, 1, 0},  {84.12, 1, 0},  {93.12, 1, 0}, {98.64, 1, 0}, {105.12, 1, 0},
    {105.84, 1, 0}, {127.92, 1, 0}, {128.04, 1, 0}, {173.4, 1, 0}};

// Days at which valve seats were replaced in 41 diesel engines: Nelson & Doganaksoy (1989); Nelson,
// Technometrics 37 (1995) 147.
inline const std::vector<RepairHistory> kValveSeat{
    // clang-format off
    {761, {}}, {759, {}}, {667, {98}}, {667, {326, 653, 653}}, {665, {}}, {667, {84}},
    {663, {87}}, {653, {646}}, {653, {92}}, {651, {}}, {650, {258, 328, 377, 621}},
    {648, {61, 539}}, {644, {254, 276, 298, 640}}, {642, {76, 538}}, {641, {635}},
    {649, {349, 404, 561}}, {631, {}}, {596, {}}, {614, {120, 479}}, {582, {323, 449}},
    {589, {139, 139}}, {593, {}}, {589, {573}}, {606, {165, 408, 604}}, {594, {249}},
    {613, {344, 497}}, {595, {265, 586}}, {389, {166, 206, 348}}, {601, {}}, {601, {410, 581}},
    {611, {}}, {608, {}}, {587, {}}, {603, {367}}, {585, {202, 563, 570}}, {587, {}}, {578, {}},
    {578, {}}, {586, {}}, {585, {}}, {582, {}}  // clang-format on
};

}  // namespace shoplore::testing
