// Engine families of the five invented makes, and how vehicles live on the island.
#include "corpus-demo/pattern_tables.hpp"

namespace shoplore {

std::vector<EngineFamily> demo_families() {
  constexpr auto kManual = Transmission::kManual;
  constexpr auto kAutomatic = Transmission::kAutomatic;
  return {
      {"AL10P", "Arlune", Fuel::kPetrol, kManual, 2012, {"Kittiwake"}},
      {"AL12P", "Arlune", Fuel::kPetrol, kManual, 2010, {"Skerry", "Kittiwake"}},
      {"AL15D", "Arlune", Fuel::kDiesel, kManual, 2009, {"Skerry", "Fulmar"}},
      {"AL16P", "Arlune", Fuel::kPetrol, kManual, 2006, {"Skerry"}},
      {"AL18H", "Arlune", Fuel::kHybrid, kAutomatic, 2014, {"Spindrift"}},
      {"AL20D", "Arlune", Fuel::kDiesel, kManual, 2007, {"Fulmar", "Razorbill"}},
      {"AL22D", "Arlune", Fuel::kDiesel, kManual, 2013, {"Razorbill"}},
      {"ALE60", "Arlune", Fuel::kElectric, kAutomatic, 2019, {"Dray"}},
      {"ALE75", "Arlune", Fuel::kElectric, kAutomatic, 2020, {"Spindrift"}},
      {"BW10P", "Brackwater", Fuel::kPetrol, kManual, 2013, {"Sluice"}},
      {"BW12P", "Brackwater", Fuel::kPetrol, kManual, 2014, {"Sluice"}},
      {"BW14P", "Brackwater", Fuel::kPetrol, kManual, 2008, {"Tidal"}},
      {"BW15H", "Brackwater", Fuel::kHybrid, kAutomatic, 2015, {"Mooring"}},
      {"BW16D", "Brackwater", Fuel::kDiesel, kManual, 2010, {"Tidal", "Estuary"}},
      {"BW18H", "Brackwater", Fuel::kHybrid, kAutomatic, 2013, {"Mooring"}},
      {"BW20D", "Brackwater", Fuel::kDiesel, kAutomatic, 2008, {"Estuary", "Harbour", "Saltmarsh"}},
      {"BW24D", "Brackwater", Fuel::kDiesel, kAutomatic, 2012, {"Saltmarsh"}},
      {"BWE50", "Brackwater", Fuel::kElectric, kAutomatic, 2018, {"Slipway"}},
      {"CM10P", "Cormont", Fuel::kPetrol, kManual, 2013, {"Corrie"}},
      {"CM12P", "Cormont", Fuel::kPetrol, kManual, 2009, {"Cairn", "Corrie"}},
      {"CM14P", "Cormont", Fuel::kPetrol, kManual, 2007, {"Cairn", "Ridge", "Tarn"}},
      {"CM16H", "Cormont", Fuel::kHybrid, kAutomatic, 2016, {"Tarn"}},
      {"CM16P", "Cormont", Fuel::kPetrol, kAutomatic, 2008, {"Ridge", "Fell"}},
      {"CM18D", "Cormont", Fuel::kDiesel, kManual, 2009, {"Fell", "Scarp"}},
      {"CM20D", "Cormont", Fuel::kDiesel, kManual, 2012, {"Scarp"}},
      {"CME40", "Cormont", Fuel::kElectric, kAutomatic, 2017, {"Wold"}},
      {"CME65", "Cormont", Fuel::kElectric, kAutomatic, 2020, {"Wold"}},
      {"DM13D", "Dunmarrow", Fuel::kDiesel, kManual, 2009, {"Byre"}},
      {"DM16P", "Dunmarrow", Fuel::kPetrol, kManual, 2010, {"Shieling"}},
      {"DM18H", "Dunmarrow", Fuel::kHybrid, kAutomatic, 2017, {"Furlong"}},
      {"DM20D", "Dunmarrow", Fuel::kDiesel, kManual, 2014, {"Shieling"}},
      {"DM22D", "Dunmarrow", Fuel::kDiesel, kManual, 2011, {"Croft"}},
      {"DM25D", "Dunmarrow", Fuel::kDiesel, kManual, 2004, {"Drover", "Croft", "Hayrick"}},
      {"DM30D", "Dunmarrow", Fuel::kDiesel, kAutomatic, 2008, {"Hayrick"}},
      {"DME75", "Dunmarrow", Fuel::kElectric, kAutomatic, 2021, {"Furlong"}},
      {"EL10P", "Elvetia", Fuel::kPetrol, kManual, 2011, {"Col"}},
      {"EL12P", "Elvetia", Fuel::kPetrol, kManual, 2014, {"Couloir"}},
      {"EL14P", "Elvetia", Fuel::kPetrol, kManual, 2012, {"Couloir"}},
      {"EL16P", "Elvetia", Fuel::kPetrol, kManual, 2008, {"Alpage"}},
      {"EL18H", "Elvetia", Fuel::kHybrid, kAutomatic, 2012, {"Serac"}},
      {"EL20D", "Elvetia", Fuel::kDiesel, kAutomatic, 2007, {"Alpage", "Moraine"}},
      {"EL20H", "Elvetia", Fuel::kHybrid, kAutomatic, 2015, {"Firn"}},
      {"EL22D", "Elvetia", Fuel::kDiesel, kAutomatic, 2013, {"Moraine"}},
      {"ELE55", "Elvetia", Fuel::kElectric, kAutomatic, 2019, {"Firn"}}};
}

// Duty and where it stands at night: half the island lives near the quay.
std::vector<FactRates> demo_facts() {
  return {{"duty", {{"taxi", 0.20}, {"delivery", 0.26}, {"farm", 0.16}, {"private", 0.38}}},
          {"kept", {{"quay", 0.32}, {"inland", 0.43}, {"garage", 0.25}}}};
}

FactRates kept_by_the_sea() {
  return {"kept", {{"quay", 0.56}, {"inland", 0.32}, {"garage", 0.12}}};
}

FactRates much_idling_and_short_trips() {
  return {"duty", {{"taxi", 0.34}, {"delivery", 0.34}, {"farm", 0.08}, {"private", 0.24}}};
}

FactRates heavy_work() {
  return {"duty", {{"taxi", 0.14}, {"delivery", 0.36}, {"farm", 0.34}, {"private", 0.16}}};
}

}  // namespace shoplore
