#pragma once
// The rules that each family file defines. Private to core/rules; the registry lists them.

#include "core/rules/rule.h"

namespace sump {

extern const Rule kCodeProfile;
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
extern const Rule kShortPipe;
extern const Rule kBendInWall;
extern const Rule kWallAlong;
extern const Rule kBasinOpening;
extern const Rule kVentAirSpace;
extern const Rule kVentOverRoof;
extern const Rule kInletAboveOutlet;
extern const Rule kOutletDip;
extern const Rule kInletDip;
extern const Rule kFirstChamberShare;
extern const Rule kLiquidDepth;
extern const Rule kSludgeShare;
extern const Rule kDeepBurial;
extern const Rule kCleanoutSpacing;
extern const Rule kCleanoutTurn;
extern const Rule kWaterSewerApart;
extern const Rule kCrossingClearance;
extern const Rule kMainDistance;
extern const Rule kWaterOverTank;
extern const Rule kBuoyancy;
extern const Rule kFootingPlane;
extern const Rule kFootingPass;
extern const Rule kDigOverlap;
extern const Rule kDigProtection;
extern const Rule kDigEgress;
extern const Rule kSpoilEdge;
extern const Rule kSpoilRoom;
extern const Rule kConduitBends;
extern const Rule kConduitFill;
extern const Rule kMixedRaceway;
extern const Rule kWorkingSpace;
extern const Rule kDisconnectInSight;
extern const Rule kSuppliesKnown;
extern const Rule kBoxAccess;
extern const Rule kBasinSump;
extern const Rule kReliefDrain;
extern const Rule kPeakDetention;
extern const Rule kPeakLevel;
extern const Rule kDrainCapacity;
extern const Rule kDrainSpeed;
extern const Rule kSandArea;
extern const Rule kSludgeInterval;
extern const Rule kLowWater;
extern const Rule kSuctionLift;
extern const Rule kNpshMargin;
extern const Rule kLineSpeed;
extern const Rule kLinePressure;
extern const Rule kProductPressure;
extern const Rule kReclaimShare;
extern const Rule kReclaimedMarking;
extern const Rule kManwayClear;
extern const Rule kConnectorRoom;
extern const Rule kChamberReach;
extern const Rule kSleeveRoom;
extern const Rule kTapLevel;

inline constexpr std::string_view kPractice = "common practice, no source";

} // namespace sump
