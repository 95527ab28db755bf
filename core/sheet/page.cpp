#include "core/sheet/page.h"

#include "core/units/print.h"

namespace sump {

namespace {

std::string plainNumber(double v) {
  return fixed(v, 2);
}

std::string points(const std::vector<Point2>& list) {
  std::string text;
  for (Point2 p : list)
    text += " " + plainNumber(p.x) + "," + plainNumber(p.y);
  return text;
}

std::string describe(const PageShape& shape) {
  std::string text = shape.round ? "circle" : shape.closed ? "ring" : "line";
  if (shape.line) {
    text += " ink " + std::to_string(static_cast<int>(shape.line->ink)) + " width " +
            plainNumber(shape.line->width);
    const char* before = " dash ";
    for (double d : shape.line->dash) {
      text += before + plainNumber(d);
      before = "/";
    }
  }
  if (shape.fill) {
    text += " fill " + std::to_string(static_cast<int>(shape.fill->ink)) + " hatch " +
            std::to_string(static_cast<int>(shape.fill->hatch));
  }
  return text + points(shape.points);
}

std::string describe(const PageText& text) {
  static constexpr const char* kAlign[] = {"left", "centre", "right"};
  return std::string("text ") + kAlign[static_cast<int>(text.align)] + " " +
         plainNumber(text.at.x) + "," + plainNumber(text.at.y) + " height " +
         plainNumber(text.height) + (text.angle != 0 ? " angle " + plainNumber(text.angle) : "") +
         (text.bold ? " bold" : "") +
         (text.ink != Ink::Black ? " ink " + std::to_string(static_cast<int>(text.ink)) : "") +
         " \"" + text.text + "\"";
}

} // namespace

const std::vector<PaperSize>& paperSizes() {
  // ISO 216 A series; ANSI/ASME Y14.1 sizes B-D; architectural sizes B-E (ASME Y14.1 annex).
  static const std::vector<PaperSize> sizes = {
      {"arch-b", "ARCH B", 457.2, 304.8},
      {"arch-c", "ARCH C", 609.6, 457.2},
      {"arch-d", "ARCH D", 914.4, 609.6},
      {"arch-e", "ARCH E", 1219.2, 914.4},
      {"ansi-b", "ANSI B", 431.8, 279.4},
      {"ansi-c", "ANSI C", 558.8, 431.8},
      {"ansi-d", "ANSI D", 863.6, 558.8},
      {"a4", "A4", 297, 210},
      {"a3", "A3", 420, 297},
      {"a2", "A2", 594, 420},
      {"a1", "A1", 841, 594},
  };
  return sizes;
}

const PaperSize* paperSize(std::string_view key) {
  for (const PaperSize& size : paperSizes()) {
    if (size.key == key) return &size;
  }
  return nullptr;
}

std::string dump(const Page& page) {
  std::string text = "page " + page.number + " \"" + page.title + "\" " + plainNumber(page.width) +
                     " x " + plainNumber(page.height) + "\n";
  for (const PageItem& item : page.items) {
    text += std::visit([](const auto& i) { return describe(i); }, item) + "\n";
  }
  return text;
}

} // namespace sump
