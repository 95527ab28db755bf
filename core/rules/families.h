#pragma once
// The rules that each family file defines. Private to core/rules; the registry lists them.

#include "core/rules/rule.h"

namespace sump {

extern const Rule kLevelKnown;
extern const Rule kLinesPresent;
extern const Rule kStorageVolume;
extern const Rule kFlowOrder;
extern const Rule kGravitySlope;
extern const Rule kInterconnectDepth;
extern const Rule kVaultLink;
extern const Rule kBaffleFullHeight;
extern const Rule kLidAirspace;
extern const Rule kEductorMount;
extern const Rule kSuctionSource;
extern const Rule kSuctionRise;
extern const Rule kProductSize;
extern const Rule kOverflowBackflow;
extern const Rule kMakeUpProtection;
extern const Rule kRoomClearance;
extern const Rule kPipeCover;
extern const Rule kConduitCover;
extern const Rule kTrafficLid;
extern const Rule kManwayPerChamber;
extern const Rule kVaultClash;
extern const Rule kStockBend;

inline constexpr std::string_view kPractice = "common practice, no source";

} // namespace sump
