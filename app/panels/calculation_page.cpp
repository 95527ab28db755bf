#include "app/panels/calculation_page.h"

#include "core/study/calculation_print.h"

#include <QTextDocument>
#include <QUrl>

#include <algorithm>
#include <set>

namespace sump {

namespace {

QString pageText(const char* source) {
  return QCoreApplication::translate("CalculationPage", source);
}

QString html(const std::string& s) {
  return QString::fromStdString(s).toHtmlEscaped();
}

/// Of core's own words, in the window's language.
QString words(const std::string& english) {
  return coreText(english).toHtmlEscaped();
}

/// Of core's sentences with values in them.
QString filled(const std::string& english, const KeptWords& kept) {
  return coreFilled(english, kept).toHtmlEscaped();
}

/// A figure with what it is of: `5.2 ft of water`.
QString figure(const std::string& printed) {
  return unitsHeld(coreFilled(printed)).toHtmlEscaped();
}

/// As it was worked out, in SI: `0.0031 m/s`.
QString siFigure(double value, QuantityKind kind) {
  return unitsHeld(QString::fromStdString(printSi(value, kind))).toHtmlEscaped();
}

/// The names of the plan and the symbols of the formula.
KeptWords keptOf(const PageSource& source, const Calculation& c) {
  QStringList names = source.names;
  for (const CalculationInput& in : c.inputs)
    names << QString::fromStdString(in.symbol);
  return KeptWords(names);
}

QString encoded(const std::string& target) {
  return QString::fromLatin1(QUrl::toPercentEncoding(QString::fromStdString(target)));
}

QString link(const QString& target, const QString& words) {
  return QString("<a href=\"%1\">%2</a>").arg(target, words);
}

QString faint(const PageSource& source, const QString& words) {
  return QString("<span style=\"color:%1\">%2</span>").arg(source.faint.name(), words);
}

/// `>Value`: of figures, which stand at the right.
bool isFigure(const QString& heading) {
  return heading.startsWith('>');
}
QString plainHeading(const QString& heading) {
  return heading.mid(isFigure(heading) ? 1 : 0).toHtmlEscaped();
}

QString cellHtml(const QString& heading, const QString& cell, bool head) {
  // A longer figure may take two lines rather than the room of the words beside it.
  constexpr qsizetype kOneLine = 17;
  const bool whole = isFigure(heading) && !head && cell.size() <= kOneLine;
  return QString("<td align=\"%1\" style=\"padding-right:5px;%2\">%3</td>")
      .arg(isFigure(heading) ? "right" : "left", whole ? "white-space:nowrap" : "", cell);
}

/// Rows of a table without frames: a faint heading, figures to the right.
QString wideTable(const PageSource& source, const QStringList& headings,
                  const std::vector<QStringList>& rows) {
  QString all = "<table cellspacing=\"0\" cellpadding=\"2\"><tr>";
  for (const QString& heading : headings)
    all += cellHtml(heading, faint(source, plainHeading(heading)), true);
  for (const QStringList& cells : rows) {
    all += "</tr><tr>";
    for (qsizetype c = 0; c < headings.size(); ++c)
      all += cellHtml(headings[c], cells.value(c), false);
  }
  return all + "</tr></table>";
}

/// Each row as a few lines of its own, every cell beside its heading.
QString listTable(const PageSource& source, const QStringList& headings,
                  const std::vector<QStringList>& rows) {
  constexpr int kBetweenRows = 8; // pixels
  QString all = "<table cellspacing=\"0\" cellpadding=\"1\">";
  for (const QStringList& cells : rows) {
    QString first = QString("padding-top:%1px;").arg(kBetweenRows);
    QString before; // what has no heading leads the next cell
    for (qsizetype c = 0; c < headings.size(); ++c) {
      const QString heading = plainHeading(headings[c]), cell = cells.value(c);
      if (cell.isEmpty()) continue;
      if (heading.isEmpty()) {
        before = cell + "  ";
        continue;
      }
      all += QString("<tr><td style=\"%1padding-right:8px\">%2</td><td style=\"%1\">%3</td></tr>")
                 .arg(first, faint(source, heading), before + cell);
      first.clear();
      before.clear();
    }
  }
  return all + "</table>";
}

/// Without breaking a word.
bool fits(const PageSource& source, const QString& table) {
  QTextDocument probe;
  probe.setDefaultFont(source.font);
  probe.setDefaultTextOption(pageOption());
  probe.setDocumentMargin(0);
  probe.setHtml(table);
  probe.setTextWidth(source.room);
  return probe.size().width() <= source.room;
}

QString tableHtml(const PageSource& source, const QStringList& headings,
                  const std::vector<QStringList>& rows) {
  const QString wide = wideTable(source, headings, rows);
  return fits(source, wide) ? wide : listTable(source, headings, rows);
}

QString resultHtml(const PageSource& source, const Calculation& c, const KeptWords& kept) {
  if (!c.decided) {
    return pageText("Cannot be decided: needs %1.").arg(needsHtml(c.needs, source.groups, kept));
  }
  const std::string value = printResult(c, source.review.plan.project.units);
  const bool isSi = value == printSi(c.result, c.kind);
  return "<b>" + figure(value) + "</b>" + (isSi ? "" : " (" + siFigure(c.result, c.kind) + ")");
}

QString originHtml(const PageSource& source, const Calculation& c, const CalculationInput& input,
                   const KeptWords& kept) {
  const NumberedCalculation* origin = source.outline.origin(c, input);
  if (origin == nullptr) return filled(input.from, kept);
  const QString number = QString::fromStdString(origin->number);
  return link("calculation:" + number, number + " " + words(origin->calculation.title));
}

QString inputsHtml(const PageSource& source, const Calculation& c, const KeptWords& kept) {
  if (c.inputs.empty()) return {};
  const UnitSystem units = source.review.plan.project.units;
  std::vector<QStringList> rows;
  for (const CalculationInput& in : c.inputs) {
    rows.push_back({html(in.symbol), filled(in.name, kept), figure(printInput(in, units)),
                    siFigure(in.value, in.kind), originHtml(source, c, in, kept)});
  }
  return tableHtml(source,
                   {pageText("Symbol"), pageText("Input"), pageText(">Value"), pageText(">in SI"),
                    pageText("From")},
                   rows);
}

QString choicesHtml(const PageSource& source, const Id& object) {
  QString all;
  for (const ChoiceTable& table : choiceTables(source.review, object)) {
    std::vector<QStringList> rows = table.rows;
    for (QStringList& row : rows) {
      for (QString& cell : row)
        cell = cell.toHtmlEscaped();
    }
    all += "<h4>" + table.title.toHtmlEscaped() + ", " + html(object) + "</h4>" +
           tableHtml(source, table.headings, rows);
  }
  return all;
}

QString objectLink(const Id& object) {
  return link("object:" + encoded(object), html(object));
}

} // namespace

QTextOption pageOption() {
  QTextOption option;
  option.setWrapMode(QTextOption::WordWrap);
  return option;
}

/// The figure of the form that a need of core/study is met by; empty: it is met in the drawing.
std::string keyOfNeed(const QString& need, const std::vector<BasisGroup>& groups) {
  // Where the study's words are not those of the form.
  static constexpr std::pair<const char*, const char*> kWords[] = {
      {"flow of the recirculation", "pump.recirculation"},
      {"flow of the underflow", "pump.underflow"},
      {"flow of the make-up", "makeUp.flow"},
      {"pump head while the underflow", ""},
      {"low-level float", "water.lowLevel"},
      {"simultaneity", "demand.simultaneity"},
      {"wash water lost", "demand.lostFraction"},
      {"water for one wash", "demand.vehicles"},
      {"pressure needed by", "demand.devices"},
      {"head lost in the equipment", "pump.equipmentLoss"},
      {"pressure wanted at the eductor", "pump.eductorPressure"},
      {"soil counts against flotation", "earth.soilHold"}};
  for (const auto& [words, key] : kWords) {
    if (need.contains(words)) return key;
  }
  return basisKeyNamed(groups, need);
}

QString needsHtml(const std::string& needs, const std::vector<BasisGroup>& groups,
                  const KeptWords& kept) {
  QStringList parts;
  for (const QString& need : QString::fromStdString(needs).split(", ", Qt::SkipEmptyParts)) {
    const std::string key = keyOfNeed(need, groups);
    const QString mine = filled(need.toStdString(), kept);
    parts << (key.empty() ? mine : link("know:" + encoded(key), mine));
  }
  return parts.join(", ");
}

QString calculationPage(const PageSource& source, const NumberedCalculation& entry) {
  const Calculation& c = entry.calculation;
  const KeptWords kept = keptOf(source, c);
  QString page =
      "<h3>" + html(entry.number) + "  " + words(c.title) + "</h3><p>" + words(c.section);
  if (!c.object.empty()) page += ", " + objectLink(c.object);
  page += "</p><p>" + faint(source, pageText("Result")) + "<br>" + resultHtml(source, c, kept) +
          "</p><p>" + faint(source, pageText("Formula, in SI")) + "<br>" + filled(c.formula, kept) +
          "</p>" + inputsHtml(source, c, kept);
  if (!c.steps.empty()) {
    page += "<p>" + faint(source, pageText("Steps"));
    for (const std::string& step : c.steps)
      page += "<br>" + filled(step, kept);
    page += "</p>";
  }
  page += "<p>" + faint(source, pageText("Source")) + "<br>" + filled(c.source, kept) + "</p>";
  return page + (c.object.empty() ? QString() : choicesHtml(source, c.object));
}

QString sectionPage(const PageSource& source, const CalculationSection& section) {
  std::vector<QStringList> rows;
  std::vector<Id> objects;
  std::set<Id> seen;
  const KeptWords kept(source.names);
  for (const NumberedCalculation& entry : section.entries) {
    const Calculation& c = entry.calculation;
    const QString number = QString::fromStdString(entry.number);
    rows.push_back({link("calculation:" + number, number), words(c.title),
                    c.object.empty() ? QString() : objectLink(c.object),
                    resultHtml(source, c, kept)});
    if (!c.object.empty() && seen.insert(c.object).second) objects.push_back(c.object);
  }
  QString page =
      "<h3>" + html(section.number) + "  " + words(section.title) + "</h3>" +
      tableHtml(source, {"", pageText("Quantity"), pageText("Of"), pageText("Result")}, rows);
  for (const Id& object : objects)
    page += choicesHtml(source, object);
  return page;
}

QString summaryHtml(const ObjectSummary& summary, const PageSource& source) {
  const KeptWords kept(source.names);
  QStringList parts;
  std::vector<std::pair<QString, QStringList>> open; // figures by what they need
  for (const SummaryFigure& figure : summary.figures) {
    const QString name = figure.name.toHtmlEscaped();
    if (!figure.value.isEmpty()) {
      parts << name + " <b>" + figure.value.toHtmlEscaped() + "</b>";
      continue;
    }
    const auto same = [&](const auto& entry) { return entry.first == figure.needs; };
    const auto group = std::ranges::find_if(open, same);
    if (group == open.end()) {
      open.push_back({figure.needs, {name}});
    } else {
      group->second << name;
    }
  }
  for (const auto& [needs, names] : open) {
    parts << names.join(", ") + pageText(" not known: needs %1")
                                    .arg(needsHtml(needs.toStdString(), source.groups, kept));
  }
  return "<b>" + summary.title.toHtmlEscaped() + "</b>" +
         (parts.isEmpty() ? QString() : ": " + parts.join(", "));
}

} // namespace sump
