#pragma once
// The underlined letters of a menu: each entry is reached by one of its own, in every language and
// in menus that are put together as they open.

class QMenu;

namespace sump {

/// An entry keeps the letter that its text marks with `&` unless one before it has it, or one could
/// have none otherwise; the others get a free one, rather the first of a word. The next call starts
/// from the entries' own texts again, so that one that stands in two menus has its letter back in
/// the other.
void giveLetters(QMenu& menu);

} // namespace sump
