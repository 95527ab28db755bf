#include "core/sheet/style.h"

namespace sump {

// Service colours: the APWA Uniform Color Code's hues, darkened where the safety colour would be
// too pale for a thin line on white paper (yellow, orange). from memory
Color paperColor(Ink ink) {
  switch (ink) {
  case Ink::Black:
    return {0, 0, 0};
  case Ink::Grey:
    return {110, 110, 110};
  case Ink::PaleGrey:
    return {200, 200, 200};
  case Ink::White:
    return {255, 255, 255};
  case Ink::ServiceRed:
    return {200, 20, 30};
  case Ink::ServiceYellow:
    return {190, 150, 0};
  case Ink::ServiceOrange:
    return {215, 100, 0};
  case Ink::ServiceBlue:
    return {0, 85, 190};
  case Ink::ServicePurple:
    return {120, 30, 150};
  case Ink::ServiceGreen:
    return {0, 120, 55};
  case Ink::Concrete:
    return {214, 211, 205};
  case Ink::Water:
    return {221, 238, 247};
  case Ink::Paving:
    return {243, 242, 239};
  case Ink::Building:
    return {233, 228, 218};
  }
  return {};
}

Ink ink(UtilityColor color) {
  switch (color) {
  case UtilityColor::White: // proposed excavation; white would not show on paper
  case UtilityColor::Pink:  // survey marks
    return Ink::Grey;
  case UtilityColor::Red:
    return Ink::ServiceRed;
  case UtilityColor::Yellow:
    return Ink::ServiceYellow;
  case UtilityColor::Orange:
    return Ink::ServiceOrange;
  case UtilityColor::Blue:
    return Ink::ServiceBlue;
  case UtilityColor::Purple:
    return Ink::ServicePurple;
  case UtilityColor::Green:
    return Ink::ServiceGreen;
  }
  return Ink::Grey;
}

// Widths from the ISO 128-2 series: gravity 0.7, suction and pressure 0.5, air and conduit 0.35.
// No two services share a pattern of one width, so that a black-and-white print still tells them
// apart; a test holds that.
LineStyle serviceLine(Service service) {
  const Ink color = ink(facts(service).color);
  switch (service) {
  case Service::Inlet:
    return {color, 0.7, {}};
  case Service::Interconnect:
    return {color, 0.7, {3, 1.5}};
  case Service::Link:
    return {color, 0.7, {8, 2}};
  case Service::Suction:
    return {color, 0.5, {10, 1.5, 2, 1.5}};
  case Service::SpareSuction:
    return {color, 0.5, {6, 1.5, 2, 1.5, 2, 1.5}};
  case Service::Recirculation:
    return {color, 0.5, {8, 1.5, 0.6, 1.5}};
  case Service::Underflow:
    return {color, 0.5, {5, 1.5, 0.6, 1.5, 0.6, 1.5}};
  case Service::FloatConduit:
    return {color, 0.35, {0.7, 1.2}};
  case Service::Overflow:
    return {color, 0.7, {12, 1.8, 0.8, 1.8}};
  case Service::MakeUp:
    return {color, 0.5, {5, 2}};
  case Service::Product:
    return {color, 0.5, {}};
  case Service::Vent:
    return {color, 0.35, {2, 1.5}};
  case Service::Power:
    return {color, 0.35, {10, 1.2, 3, 1.2}};
  case Service::Signal:
    return {color, 0.35, {5, 1.2, 0.7, 1.2}};
  }
  return {color, 0.35, {}};
}

} // namespace sump
