#include "core/plan/service.h"

namespace sump {

// Colours: APWA Uniform Color Code; wash drains are drains (green), reclaimed water and what
// carries it are purple, vents follow the drain they serve.
const std::array<ServiceFacts, kServiceCount>& serviceTable() {
  static const std::array<ServiceFacts, kServiceCount> table = {{
      {Service::Inlet, "inlet", "WW", "Wash-water inlet", Drive::Gravity, UtilityColor::Green,
       "plumbing"},
      {Service::Interconnect, "interconnect", "IC", "Chamber interconnect", Drive::Gravity,
       UtilityColor::Purple, "plumbing"},
      {Service::Link, "link", "LK", "Vault link", Drive::Gravity, UtilityColor::Purple, "plumbing"},
      {Service::Suction, "suction", "SU", "Suction", Drive::Suction, UtilityColor::Purple,
       "plumbing"},
      {Service::SpareSuction, "spare-suction", "SS", "Spare suction", Drive::Suction,
       UtilityColor::Purple, "plumbing"},
      {Service::Recirculation, "recirculation", "RC", "Recirculation", Drive::Pressure,
       UtilityColor::Purple, "plumbing"},
      {Service::Underflow, "underflow", "UF", "Underflow", Drive::Pressure, UtilityColor::Purple,
       "plumbing"},
      {Service::FloatConduit, "float-conduit", "FC", "Float conduit", Drive::Conduit,
       UtilityColor::Orange, "electrical"},
      {Service::Overflow, "overflow", "OF", "Overflow to sewer", Drive::Gravity,
       UtilityColor::Green, "plumbing"},
      {Service::MakeUp, "make-up", "MU", "Fresh-water make-up", Drive::Pressure, UtilityColor::Blue,
       "plumbing"},
      {Service::Product, "product", "PW", "Product water", Drive::Pressure, UtilityColor::Purple,
       "plumbing"},
      {Service::Vent, "vent", "VT", "Vent", Drive::Air, UtilityColor::Green, "plumbing"},
      {Service::Power, "power", "PC", "Power conduit", Drive::Conduit, UtilityColor::Red,
       "electrical"},
      {Service::Signal, "signal", "SG", "Wash-demand signal conduit", Drive::Conduit,
       UtilityColor::Orange, "electrical"},
  }};
  return table;
}

const ServiceFacts& facts(Service service) {
  return serviceTable()[static_cast<std::size_t>(service)];
}

std::optional<Service> serviceFromKey(std::string_view key) {
  for (const ServiceFacts& f : serviceTable()) {
    if (f.key == key) return f.service;
  }
  return std::nullopt;
}

bool isGravity(Service service) {
  return facts(service).drive == Drive::Gravity;
}
bool isConduit(Service service) {
  return facts(service).drive == Drive::Conduit;
}

} // namespace sump
