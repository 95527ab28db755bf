#include "core/sheet/undecided.h"

#include "core/sheet/tags.h"

#include <algorithm>

namespace sump {

namespace {

void add(std::vector<Undecided>& list, const std::string& what, const std::string& about,
         const std::string& needs) {
  auto known = std::ranges::find_if(
      list, [&](const Undecided& u) { return u.what == what && u.needs == needs; });
  if (known == list.end()) known = list.insert(list.end(), Undecided{what, {}, needs, 0});
  ++known->count;
  if (!about.empty() && std::ranges::find(known->about, about) == known->about.end())
    known->about.push_back(about);
}

} // namespace

std::vector<Undecided> undecidedOf(const Review& review) {
  std::vector<Undecided> list;
  for (const Finding& finding : review.findings) {
    if (finding.decided || finding.accepted) continue;
    const auto needs = finding.what.arguments.find("needs");
    add(list, render(finding.what), "",
        needs == finding.what.arguments.end() ? std::string() : needs->second);
  }
  for (const Calculation& c : calculations(review.plan, review.study)) {
    if (c.decided) continue;
    add(list, c.title, c.object.empty() ? Id() : objectName(c.object, review.plan), c.needs);
  }
  return list;
}

std::string undecidedSummary(const std::vector<Undecided>& list) {
  int count = 0;
  std::vector<std::string> needs;
  for (const Undecided& item : list) {
    count += item.count;
    const std::string& need = item.needs.empty() ? item.what : item.needs;
    if (std::ranges::find(needs, need) == needs.end()) needs.push_back(need);
  }
  std::string text = std::to_string(count);
  for (std::size_t i = 0; i < needs.size(); ++i)
    text += (i == 0 ? " (needs " : "; ") + needs[i];
  return needs.empty() ? text : text + ")";
}

std::string undecidedText(const Undecided& item) {
  std::string text = item.what;
  for (std::size_t i = 0; i < item.about.size(); ++i)
    text += (i == 0 ? " (" : ", ") + item.about[i];
  if (!item.about.empty()) text += ")";
  // A finding's words say already what it needs.
  if (item.needs.empty() || text.find(item.needs) != std::string::npos) return text;
  return text + ": needs " + item.needs + ".";
}

} // namespace sump
