#include "app/canvas/label_areas.h"

namespace sump {

namespace {

bool isArea(const Mark& mark) {
  const bool covers = mark.layer == Layer::Paving || mark.layer == Layer::Building ||
                      mark.layer == Layer::Basin || mark.layer == Layer::Room ||
                      mark.layer == Layer::Vault;
  return covers && mark.closed && !mark.round && mark.fill && mark.points.size() > 2;
}

} // namespace

LabelAreas::LabelAreas(const Scene& scene, const View& view) : scene_(scene) {
  std::vector<Box> boxes;
  for (std::size_t i : scene.visible(view.visible())) {
    if (!isArea(scene.marks()[i])) continue;
    marks_.push_back(i);
    boxes.push_back(markBox(scene.marks()[i]));
  }
  index_ = BoxIndex(boxes);
}

} // namespace sump
