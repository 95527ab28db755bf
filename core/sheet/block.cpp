#include "core/sheet/block.h"

#include <algorithm>
#include <cctype>

namespace sump {

double Block::height() const {
  double sum = 0;
  for (const PaperStrip& s : head)
    sum += s.height;
  for (const PaperStrip& s : body)
    sum += s.height;
  return sum;
}

void moveItem(PageItem& item, Point2 by) {
  if (auto* text = std::get_if<PageText>(&item)) {
    text->at = text->at + by;
  } else {
    for (Point2& p : std::get<PageShape>(item).points)
      p = p + by;
  }
}

Block enlarged(Block block, double times) {
  block.width *= times;
  for (auto* strips : {&block.head, &block.body}) {
    for (PaperStrip& strip : *strips) {
      strip.height *= times;
      for (PageItem& item : strip.items) {
        if (auto* text = std::get_if<PageText>(&item)) {
          text->at = text->at * times;
          text->height *= times;
        } else {
          for (Point2& p : std::get<PageShape>(item).points)
            p = p * times;
        }
      }
    }
  }
  return block;
}

PageShape rule(Point2 a, Point2 b, double width) {
  return {{a, b}, false, false, LineStyle{Ink::Black, width, {}}, {}};
}

PageText words(Point2 at, std::string text, double height, bool bold, Align align) {
  return {at, std::move(text), height, align, 0, bold, Ink::Black};
}

namespace {

/// Bytes of the longest start of `word` that fits, at least one character.
std::size_t fitting(const std::string& word, double width, double height, bool bold) {
  std::size_t best = 0;
  for (std::size_t i = 1; i <= word.size(); ++i) {
    if (i < word.size() && (static_cast<unsigned char>(word[i]) & 0xC0) == 0x80) continue;
    if (best > 0 && textWidth(word.substr(0, i), height, bold) > width) break;
    best = i;
  }
  // After a hyphen if there is one.
  const std::size_t hyphen = best < word.size() && best > 0 ? word.rfind('-', best - 1) : word.npos;
  return hyphen != word.npos && hyphen > 0 ? hyphen + 1 : best;
}

/// Is the space at `at` inside a length such as `3'-10 1/2"`, which is read as one?
bool isInLength(const std::string& text, std::size_t at) {
  constexpr const char* kDigits = "0123456789";
  const std::size_t bar = text.find_first_not_of(kDigits, at + 1);
  if (at == 0 || bar == text.npos || bar == at + 1 || text[bar] != '/') return false;
  const std::size_t end = text.find_first_not_of(kDigits, bar + 1);
  return std::isdigit(static_cast<unsigned char>(text[at - 1])) != 0 && end != text.npos &&
         end > bar + 1 && text[end] == '"';
}

/// Where the word that begins at `at` ends.
std::size_t wordEnd(const std::string& text, std::size_t at) {
  std::size_t end = text.find(' ', at);
  while (end != text.npos && isInLength(text, end))
    end = text.find(' ', end + 1);
  return std::min(end, text.size());
}

} // namespace

std::vector<std::string> wrapped(const std::string& text, double width, double height, bool bold) {
  std::vector<std::string> lines(1);
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = wordEnd(text, at);
    std::string word = text.substr(at, end - at);
    at = end + 1;
    const std::string joined = lines.back().empty() ? word : lines.back() + " " + word;
    if (textWidth(joined, height, bold) <= width) {
      lines.back() = joined;
      continue;
    }
    if (!lines.back().empty()) lines.emplace_back();
    while (textWidth(word, height, bold) > width) {
      const std::size_t cut = fitting(word, width, height, bold);
      if (cut >= word.size()) break;
      lines.back() = word.substr(0, cut);
      lines.emplace_back();
      word.erase(0, cut);
    }
    lines.back() = word;
  }
  return lines;
}

void addNote(Block& block, const std::string& note) {
  block.body.push_back({0.8, {}, true});
  for (const std::string& line : wrapped(note, block.width, kTextHeight, false))
    block.body.push_back({kLinePitch, {words({0, 3}, line)}, true});
}

Block paragraphs(const std::string& title, const std::vector<std::string>& texts, double width,
                 bool numbered) {
  Block block{width, {}, {}};
  block.head.push_back(
      {7, {words({0, 4.4}, title, 3.5, true), rule({0, 5.8}, {width, 5.8}, 0.35)}});
  constexpr double kIndent = 7;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const auto lines = wrapped(texts[i], width - kIndent, kTextHeight, false);
    PaperStrip strip{static_cast<double>(lines.size()) * kLinePitch + 0.8, {}};
    const std::string mark = numbered ? std::to_string(i + 1) + "." : "•";
    strip.items.push_back(words({numbered ? kIndent - 1.5 : 2.5, 3.1}, mark, kTextHeight, false,
                                numbered ? Align::Right : Align::Left));
    for (std::size_t k = 0; k < lines.size(); ++k) {
      strip.items.push_back(words({kIndent, 3.1 + static_cast<double>(k) * kLinePitch}, lines[k]));
    }
    block.body.push_back(std::move(strip));
  }
  return block;
}

namespace {

/// What stands on the next column or page is headed as the rest of what began here.
void headContinued(Block& block) {
  static constexpr std::string_view kContinued = " (continued)";
  if (block.head.empty() || block.body.empty()) return;
  for (PageItem& item : block.head.front().items) {
    auto* title = std::get_if<PageText>(&item);
    if (title == nullptr) continue;
    if (!title->text.ends_with(kContinued)) title->text += kContinued;
    const double width = textWidth(title->text, title->height, title->bold);
    block.width = std::max(block.width, title->at.x + width);
    return;
  }
}

} // namespace

double place(Block& block, Point2 at, double bottom, Page& page) {
  double y = at.y;
  for (const PaperStrip& s : block.head)
    y += s.height;
  std::size_t count = 0;
  for (double below = y; count < block.body.size(); ++count) {
    below += block.body[count].height;
    if (below > bottom + 1e-9) break;
  }
  if (count == 0) return at.y;
  const auto draw = [&](const PaperStrip& strip) {
    for (PageItem item : strip.items) {
      moveItem(item, at);
      page.items.push_back(std::move(item));
    }
    at.y += strip.height;
  };
  for (const PaperStrip& s : block.head)
    draw(s);
  for (std::size_t i = 0; i < count; ++i)
    draw(block.body[i]);
  block.body.erase(block.body.begin(), block.body.begin() + static_cast<std::ptrdiff_t>(count));
  headContinued(block);
  return at.y;
}

} // namespace sump
