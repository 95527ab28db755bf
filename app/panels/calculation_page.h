#pragma once
// A calculation as a readable page of rich text. Knows no widget, but how wide the page is.
//
// Links: `calculation:4.2` to another calculation, `know:water.temperature` to a figure of 'What we
// know', `object:SU-1` to an object of the plan.

#include "app/core_text.h"
#include "app/panels/basis_fields.h"
#include "app/panels/choice_tables.h"
#include "app/panels/object_summary.h"
#include "core/study/calculation_outline.h"

#include <QColor>
#include <QFont>
#include <QString>
#include <QTextOption>

#include <vector>

namespace sump {

/// What pages are made from.
struct PageSource {
  const Review& review;
  const CalculationOutline& outline;
  const std::vector<BasisGroup>& groups; ///< of 'What we know'
  const QStringList& names;              ///< that the plan gives its objects
  QColor faint;                          ///< of labels and rules
  int room = 0; ///< pixels for a table; one that cannot break its lines there stands as a list
  QFont font{};
};

/// How the lines of a page break: between words.
QTextOption pageOption();
/// The key of the figure of the form that meets a need of core/study; empty when the drawing does.
std::string keyOfNeed(const QString& need, const std::vector<BasisGroup>& groups);
/// The missing inputs, those that the form holds as links to it.
QString needsHtml(const std::string& needs, const std::vector<BasisGroup>& groups,
                  const KeptWords& kept);
/// Title, result, formula, inputs, steps, source; then the small tables of its object.
QString calculationPage(const PageSource& source, const NumberedCalculation& entry);
/// The section's results as a table, and the small tables of what they are about.
QString sectionPage(const PageSource& source, const CalculationSection& section);
/// `Velocity 4.7 ft/s   Fall 1/4 in/ft`; what cannot be decided leads to the form.
QString summaryHtml(const ObjectSummary& summary, const PageSource& source);

} // namespace sump
