#include "core/study/context.h"

#include "core/geometry/polygon.h"

#include <algorithm>

namespace sump {

namespace {

/// Grade at the corners, the middles of the sides and the centre of the lid.
void fillGrade(const Surface& ground, VaultStudy& study, Point2 centre) {
  const auto middle = ground.elevation(centre);
  if (!middle) return;
  double low = *middle, high = *middle;
  for (std::size_t i = 0; i < study.outline.size(); ++i) {
    const Point2 corner = study.outline[i];
    const Point2 next = study.outline[(i + 1) % study.outline.size()];
    for (Point2 p : {corner, lerp(corner, next, 0.5)}) {
      const double grade = ground.elevation(p).value_or(*middle);
      low = std::min(low, grade);
      high = std::max(high, grade);
    }
  }
  study.gradeCentre = metres(*middle);
  study.gradeLow = metres(low);
  study.gradeHigh = metres(high);
  study.cover = *study.gradeLow - study.lidTop;
}

ChamberStudy chamberStudy(const Vault& vault, const ChamberBox& box) {
  ChamberStudy study;
  study.number = box.number;
  study.outline = vault.frame().rectangle(box.low, box.high);
  study.length = metres(box.high.x - box.low.x);
  study.width = metres(box.high.y - box.low.y);
  study.area = study.length * study.width;
  return study;
}

int chamberAt(const std::vector<ChamberBox>& boxes, Point2 local) {
  for (const ChamberBox& box : boxes) {
    if (local.x >= box.low.x && local.x <= box.high.x && local.y >= box.low.y &&
        local.y <= box.high.y) {
      return box.number;
    }
  }
  return 0;
}

ManwayStudy manwayStudy(const StudyContext& context, const Vault& vault, const Manway& manway,
                        Length lidTop, const std::vector<ChamberBox>& boxes) {
  ManwayStudy study;
  study.id = manway.id;
  study.at = vault.frame().toSite(manway.at);
  study.chamber = chamberAt(boxes, manway.at);
  if (const auto grade = context.ground.elevation(study.at)) study.grade = metres(*grade);
  study.rim = manway.rim ? manway.rim : study.grade;
  if (study.rim) study.riser = *study.rim - lidTop;
  return study;
}

VaultStudy shell(const StudyContext& context, const Vault& vault, int position) {
  VaultStudy study;
  study.id = vault.id;
  study.position = position;
  study.outline = outline(vault);
  study.floor = vault.floor;
  study.underside = vault.floor - vault.floorThickness;
  study.lidUnderside = vault.floor + vault.insideHeight;
  study.lidTop = study.lidUnderside + vault.lidThickness;
  fillGrade(context.ground, study, vault.centre);
  const std::vector<ChamberBox> boxes = chambers(vault);
  for (const ChamberBox& box : boxes)
    study.chambers.push_back(chamberStudy(vault, box));
  for (const Manway& manway : vault.manways) {
    study.manways.push_back(manwayStudy(context, vault, manway, study.lidTop, boxes));
  }
  for (std::size_t i : context.traffic.touching(boxOf(study.outline))) {
    if (overlaps(context.traffic.rings()[i], study.outline)) {
      study.trafficPavement = context.trafficIds[i];
      break;
    }
  }
  return study;
}

} // namespace

std::vector<VaultStudy> vaultShells(const StudyContext& context) {
  std::vector<VaultStudy> studies;
  int position = 0;
  for (const Vault& vault : context.plan.vaults) {
    studies.push_back(shell(context, vault, ++position));
  }
  return studies;
}

} // namespace sump
