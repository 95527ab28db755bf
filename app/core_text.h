#pragma once
// Texts that core makes, in the window's language. core knows no translator: its tables and
// findings are English, and the window looks them up by their English text under the contexts
// `Core` (names of services, parts, limits, reasons why an edit is refused) and `Messages`
// (patterns of findings), as it does with its own texts. Sheets and lists that leave the window
// stay in English.

#include "core/rules/finding.h"

#include <QRegularExpression>
#include <QString>
#include <QStringList>

#include <exception>
#include <string_view>

namespace sump {

struct Plan;
struct Problem;

/// A name or sentence of core's.
QString coreText(std::string_view english);
/// What belongs to no language in a sentence of core's: numbers with their units, codes such as
/// `V1` or `h_f`, what stands in quotes, and `names` (of objects, of a formula's symbols, what was
/// typed).
class KeptWords {
public:
  explicit KeptWords(QStringList names = {});
  const QRegularExpression& pattern() const { return pattern_; }

private:
  QRegularExpression pattern_;
};
/// The ids and names that the plan gives its objects.
QStringList namesIn(const Plan& plan);
/// A sentence in which core has put values, looked up with `{1}`, `{2}` ... in the places of what
/// is kept.
QString coreFilled(std::string_view english, const KeptWords& kept);
QString coreFilled(std::string_view english);
/// Why what was typed cannot be read.
QString typedProblem(std::string_view english, const QString& typed);
/// `yd³` for the `yd3` of core's tables; what is to be typed stays as it is typed.
QString powersRaised(QString text);
/// Each figure with its fraction and its unit on one line, for texts that wrap.
QString unitsHeld(QString text);
/// With its first letter large.
QString sentenceCase(QString text);
/// `ball-valve` as `Ball valve`, in the window's language.
QString coreWord(std::string_view key);
/// What a finding says: the pattern in the window's language with the finding's values.
QString messageText(const Message& message);
/// Why a file cannot be used: its place as it is, what and how to mend it in the window's language.
QString errorWords(const std::exception& error);
/// `what<between>mend`.
QString problemWords(const Problem& problem, const QString& between = QStringLiteral(": "));

} // namespace sump
