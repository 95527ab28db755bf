#pragma once
// The words of the trade and what they mean (resources/glossary/en.json), for tooltips and for the
// glossary in Help.

#include <QString>
#include <QStringList>

#include <vector>

class QDialog;
class QWidget;

namespace sump {

struct GlossaryTerm {
  QString term;
  QStringList also; ///< other forms of the word
  QString meaning;
};

/// By the alphabet.
const std::vector<GlossaryTerm>& glossary();
/// The terms that a label uses, in the order of the label; `spare suction` is not also `suction`.
std::vector<const GlossaryTerm*> termsIn(const QString& label);
/// The tip with what the label's terms mean below it, each on a line of its own.
QString tipWithTerms(const QString& label, const QString& tip);

QDialog* glossaryDialog(QWidget* parent);

} // namespace sump
