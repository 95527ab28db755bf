#include "app/window/menu_letters.h"

#include <QAction>
#include <QHash>
#include <QMenu>
#include <QSet>

#include <algorithm>

namespace sump {

namespace {

constexpr const char* kOwn = "own-text";     ///< as its maker wrote it
constexpr const char* kGiven = "given-text"; ///< as it was changed here

/// What the entry is called, whatever letter it was given last.
QString ownText(const QAction& action) {
  const bool changed = action.property(kGiven).toString() == action.text();
  return changed ? action.property(kOwn).toString() : action.text();
}

/// Where the letter stands that `&` marks; -1: none is marked. `&&` is an ampersand.
qsizetype markedAt(const QString& text) {
  for (qsizetype i = 0; i + 1 < text.size(); ++i) {
    if (text[i] != '&') continue;
    if (text[i + 1] != '&') return i + 1;
    ++i;
  }
  return -1;
}

QString withoutMark(QString text) {
  const qsizetype at = markedAt(text);
  return at < 0 ? text : text.remove(at - 1, 1);
}

/// The lower the rather: what a keyboard of any country has, and the first of a word.
int costOf(const QString& text, qsizetype at) {
  const QChar c = text[at];
  const bool plain = c.unicode() < 0x80 && c.isLetter(); // digits count things, as faults do
  const bool first = at == 0 || text[at - 1].isSpace();
  return (plain ? 0 : 2) + (first ? 0 : 1);
}

/// Each entry's letter, so that as many as can be have one: what a later entry needs, one before it
/// leaves for another (augmenting paths in the graph of entries and letters, Kuhn 1955).
class Letters {
public:
  explicit Letters(QStringList texts) : texts_(std::move(texts)), at_(texts_.size(), -1) {}

  bool isTaken(QChar letter) const { return holders_.contains(letter); }
  void take(qsizetype entry, qsizetype at) {
    holders_[texts_[entry][at].toLower()] = entry;
    at_[entry] = at;
  }
  bool find(qsizetype entry) {
    QSet<QChar> asked;
    return find(entry, asked);
  }
  /// In its text; -1: no letter was left.
  qsizetype at(qsizetype entry) const { return at_[entry]; }

private:
  QList<qsizetype> wishes(const QString& text) const {
    QList<qsizetype> places;
    for (qsizetype i = 0; i < text.size(); ++i) {
      if (text[i].isLetterOrNumber()) places << i;
    }
    std::ranges::stable_sort(places, {}, [&](qsizetype i) {
      constexpr int kRatherFree = 4;
      return costOf(text, i) + (isTaken(text[i].toLower()) ? kRatherFree : 0);
    });
    return places;
  }
  bool find(qsizetype entry, QSet<QChar>& asked) {
    for (const qsizetype at : wishes(texts_[entry])) {
      const QChar letter = texts_[entry][at].toLower();
      if (asked.contains(letter)) continue;
      asked << letter;
      if (isTaken(letter) && !find(holders_[letter], asked)) continue;
      take(entry, at);
      return true;
    }
    return false;
  }

  QStringList texts_; ///< without marks
  QList<qsizetype> at_;
  QHash<QChar, qsizetype> holders_;
};

void give(QAction& action, const QString& own, const QString& text) {
  action.setProperty(kOwn, own);
  action.setProperty(kGiven, text);
  if (action.text() != text) action.setText(text);
}

} // namespace

void giveLetters(QMenu& menu) {
  QList<QAction*> entries;
  QStringList plain;
  for (QAction* action : menu.actions()) {
    if (action->isSeparator() || !action->isVisible()) continue;
    entries << action;
    plain << withoutMark(ownText(*action));
  }
  Letters letters(plain);
  for (qsizetype i = 0; i < entries.size(); ++i) {
    const qsizetype marked = markedAt(ownText(*entries[i]));
    if (marked >= 0 && !letters.isTaken(plain[i][marked - 1].toLower()))
      letters.take(i, marked - 1);
  }
  for (qsizetype i = 0; i < entries.size(); ++i) {
    if (letters.at(i) < 0) letters.find(i);
  }
  for (qsizetype i = 0; i < entries.size(); ++i) {
    const qsizetype at = letters.at(i);
    give(*entries[i], ownText(*entries[i]), at < 0 ? plain[i] : QString(plain[i]).insert(at, '&'));
  }
}

} // namespace sump
