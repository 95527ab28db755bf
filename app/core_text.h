#pragma once
// Texts that core makes, in the window's language. core knows no translator: its tables and
// findings are English, and the window looks them up by their English text under the contexts
// `Core` (names of services, parts, limits, reasons why an edit is refused) and `Messages`
// (patterns of findings), as it does with its own texts. Sheets and lists that leave the window
// stay in English.

#include "core/rules/finding.h"

#include <QString>

#include <string_view>

namespace sump {

struct Problem;

/// A name or sentence of core's.
QString coreText(std::string_view english);
/// `ball-valve` as `Ball valve`, in the window's language.
QString coreWord(std::string_view key);
/// What a finding says: the pattern in the window's language with the finding's values.
QString messageText(const Message& message);
/// `what<between>mend`.
QString problemWords(const Problem& problem, const QString& between = QStringLiteral(": "));

} // namespace sump
