#include "app/core_text.h"

#include "app/plain_text.h"
#include "core/plan/consistency.h"
#include "core/plan/plan.h"
#include "core/rules/messages.h"

#include <QCoreApplication>

#include <algorithm>

namespace sump {

namespace {

QString translated(const char* context, std::string_view english) {
  if (english.empty()) return {};
  return QCoreApplication::translate(context, std::string(english).c_str());
}

/// Of numbers as core prints them, longest first.
constexpr const char* kUnits =
    "kg/m3|lb/ft3|kg/m³|lb/ft³|ft²/s|m²/s|m3/s|m³/s|yd³|ft³|m³|ft²|m²|ft/ft|in/ft|L/"
    "min|psi|kPa|lbf|um|gpm|gal|cubic yards|ft/s|m/s|L/s|"
    "m2/s|ft2|m2|m3|in2|mm2|ft|mm|cm|lb|kg|kN|hp|kW|Pa|min|s|h|m|L|V|A|%|°F|°C|F|C|°";

/// Numbers and codes (`12'-6 1/2"`, `5.3 ft/s`, `V1`, `h_f`, single letters but the article).
QString codePattern() {
  return QStringLiteral("[^\\s,;:()]*[\\d_][^\\s,;:()]*(?:[,.]\\d+)*(?: (?:%1)(?![\\w/]))?"
                        "|(?<![\\w'])[B-Zb-z](?![\\w'])")
      .arg(kUnits);
}

/// Names as whole words (the longest first), what stands in quotes, numbers and codes.
QRegularExpression keptPattern(const QStringList& names) {
  QStringList words;
  for (const QString& name : names) {
    if (!name.isEmpty()) words << QRegularExpression::escape(name);
  }
  const QStringList all = {QStringLiteral("(?<!\\w)(?:%1)(?!\\w)").arg(words.join('|')),
                           QStringLiteral("(?<![^\\s(])(['\"]).*?\\1(?=[\\s,;.:)]|$)"),
                           codePattern()};
  return QRegularExpression(all.join('|'), QRegularExpression::UseUnicodePropertiesOption);
}

template <class Item> void addNames(const Item& item, QStringList& names) {
  names << q(item.id);
  if constexpr (requires { item.name; }) names << q(item.name);
}

template <class List> void addAllNames(const List& items, QStringList& names) {
  for (const auto& item : items)
    addNames(item, names);
}

bool isServiceName(const std::string& text) {
  for (std::size_t i = 0; i < kServiceCount; ++i) {
    if (facts(static_cast<Service>(i)).name == text) return true;
  }
  return false;
}

} // namespace

/// Names first, from the longest on, then what is quoted, then codes.
KeptWords::KeptWords(QStringList names) {
  for (std::size_t i = 0; i < kServiceCount; ++i)
    names << q(facts(static_cast<Service>(i)).code);
  names.removeDuplicates();
  std::ranges::sort(names, [](const QString& a, const QString& b) { return a.size() > b.size(); });
  pattern_ = keptPattern(names);
  if (pattern_.isValid()) return;
  // More names than an expression can hold: those that look like codes are kept as such.
  static const QRegularExpression kCode("^[^\\s,;:()]*\\d[^\\s,;:()]*$");
  names.removeIf([](const QString& name) { return kCode.match(name).hasMatch(); });
  pattern_ = keptPattern(names);
}

QStringList namesIn(const Plan& plan) {
  QStringList names;
  const auto each = [&names](const auto&... lists) { (addAllNames(lists, names), ...); };
  each(plan.buildings, plan.pavements, plan.utilities, plan.spots, plan.wells, plan.basins,
       plan.sewers, plan.washes, plan.rooms, plan.vaults, plan.runs, plan.notes, plan.underlays,
       plan.basis.demand.devices, plan.basis.wiring.supplies, plan.basis.wiring.signalCircuits);
  for (const EquipmentRoom& room : plan.rooms)
    each(room.ports);
  for (const Vault& vault : plan.vaults)
    each(vault.baffles, vault.manways);
  for (const Run& run : plan.runs)
    each(run.parts);
  for (const VehicleTraffic& kind : plan.basis.demand.vehicles)
    names << q(kind.name);
  return names;
}

QString coreText(std::string_view english) {
  return powersRaised(translated("Core", english));
}

QString coreFilled(std::string_view english, const KeptWords& kept) {
  const QString whole = q(english);
  QString pattern;
  std::map<std::string, std::string> values;
  qsizetype end = 0;
  for (auto it = kept.pattern().globalMatch(whole); it.hasNext();) {
    const QRegularExpressionMatch match = it.next();
    const std::string place = std::to_string(values.size() + 1);
    pattern += whole.mid(end, match.capturedStart() - end) + q("{" + place + "}");
    values[place] = match.captured().toStdString();
    end = match.capturedEnd();
  }
  pattern += whole.mid(end);
  const bool hasWords = std::ranges::any_of(pattern, [](QChar c) { return c.isLetter(); });
  if (!hasWords) return whole;
  return q(filledMessage(coreText(pattern.toStdString()).toStdString(), values));
}

QString coreFilled(std::string_view english) {
  static const KeptWords kept;
  return coreFilled(english, kept);
}

QString typedProblem(std::string_view english, const QString& typed) {
  return unitsHeld(coreFilled(english, KeptWords({"'" + typed.trimmed() + "'"})));
}

QString powersRaised(QString text) {
  if (!text.contains('2') && !text.contains('3')) return text;
  static const QRegularExpression kPower(QStringLiteral("(?<!\\w)(yd|ft|in|mm|m)([23])(?!\\w)"));
  for (auto match = kPower.match(text); match.hasMatch(); match = kPower.match(text))
    text.replace(match.capturedStart(2), 1, QChar(match.captured(2) == "2" ? 0x00B2 : 0x00B3));
  return text;
}

QString unitsHeld(QString text) {
  static const QRegularExpression kFigure(QStringLiteral("(\\d) (%1)(?![\\w/])").arg(kUnits));
  constexpr QChar kWordJoiner(0x2060);
  for (auto match = kFigure.match(text); match.hasMatch(); match = kFigure.match(text)) {
    QString unit = match.captured(2);
    unit.replace('/', QString('/') + kWordJoiner);
    text.replace(match.capturedStart(), match.capturedLength(),
                 match.captured(1) + QChar::Nbsp + unit);
  }
  // `in` is a word too: an inch where a list goes on.
  static const QRegularExpression kInches(QStringLiteral("(\\d) in(?=[,;)])"));
  text.replace(kInches, QStringLiteral("\\1") + QChar::Nbsp + QStringLiteral("in"));
  static const QRegularExpression kFraction(QStringLiteral("(\\d) (\\d+)/(\\d+)"));
  return text.replace(kFraction, QStringLiteral("\\1") + QChar::Nbsp + QStringLiteral("\\2/") +
                                     kWordJoiner + QStringLiteral("\\3"));
}

QString sentenceCase(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

QString coreWord(std::string_view key) {
  return coreText(sentenceCase(q(key).replace('-', ' ')).toStdString());
}

QString messageText(const Message& message) {
  const std::string_view pattern = messagePattern(message.id);
  if (pattern.empty()) return q(sump::render(message));
  const std::string mine = translated("Messages", pattern).toStdString();
  std::map<std::string, std::string> arguments = message.arguments;
  for (auto& [name, value] : arguments) {
    if (name == "needs") value = coreFilled(value).toStdString();
    if (isServiceName(value)) value = coreText(value).toStdString();
  }
  return q(filledMessage(mine, arguments));
}

QString problemWords(const Problem& problem, const QString& between) {
  return coreText(problem.what) + between + coreText(problem.mend);
}

} // namespace sump
