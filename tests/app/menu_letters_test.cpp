// Each entry of each menu is reached by a letter of its own.

#include "app/window/context_menu.h"
#include "app/window/menu_letters.h"
#include "app/window/pseudo_language.h"
#include "tests/app/window_fixture.h"

#include <QMenu>
#include <QMenuBar>

#include <map>

namespace sump {
namespace {

/// The letter after the one `&` that is not doubled; none: a null character.
QChar letterOf(const QString& text) {
  QString rest = text;
  rest.replace("&&", "  ");
  const qsizetype at = rest.indexOf('&');
  return at < 0 || at + 1 >= rest.size() ? QChar() : rest[at + 1].toLower();
}

void expectOwnLetters(const QMenu& menu, const std::string& where) {
  std::map<QChar, QString> seen;
  for (const QAction* action : menu.actions()) {
    if (action->isSeparator() || !action->isVisible()) continue;
    const QChar letter = letterOf(action->text());
    EXPECT_FALSE(letter.isNull()) << where << ": " << action->text().toStdString();
    EXPECT_FALSE(seen.contains(letter))
        << where << ": " << seen[letter].toStdString() << " and " << action->text().toStdString();
    seen[letter] = action->text();
  }
}

TEST(MenuLetters, TheTableOfActionsGivesEachMenuItsLettersOnce) {
  std::map<std::pair<MenuId, QChar>, std::string> seen;
  for (const ActionRow& row : actionTable()) {
    const QChar letter = letterOf(QString::fromUtf8(row.text));
    ASSERT_FALSE(letter.isNull()) << row.text;
    const auto [same, fresh] = seen.emplace(std::pair(row.menu, letter), row.text);
    EXPECT_TRUE(fresh) << row.text << " and " << same->second;
  }
}

TEST(MenuLetters, TheFirstKeepsItsLetterAndOthersGetAFreeOne) {
  QMenu menu;
  for (const char* text : {"&Cut", "&Copy", "Plain", "C&&D", "pup"})
    menu.addAction(text);
  giveLetters(menu);
  const QList<QAction*> all = menu.actions();
  EXPECT_EQ(all[0]->text(), "&Cut");
  EXPECT_EQ(all[1]->text(), "C&opy");
  EXPECT_EQ(all[2]->text(), "&Plain");
  EXPECT_EQ(all[3]->text(), "C&&&D") << "an ampersand stays one";
  EXPECT_EQ(all[4]->text(), "p&up");
}

TEST(MenuLetters, AnEntryOfTwoMenusHasItsOwnLetterBack) {
  QAction shared("Turn &left");
  QMenu one, other;
  one.addAction("Cut the &line");
  one.addAction(&shared);
  other.addAction(&shared);
  giveLetters(one);
  EXPECT_EQ(shared.text(), "&Turn left");
  giveLetters(other);
  EXPECT_EQ(shared.text(), "Turn &left");
  shared.setText("Turn &right"); // by its owner, meanwhile
  giveLetters(one);
  EXPECT_EQ(shared.text(), "Turn &right");
}

class MenuLettersIn : public testing::WindowTest, public ::testing::WithParamInterface<bool> {
protected:
  void SetUp() override {
    if (GetParam()) QCoreApplication::installTranslator(&pseudo_);
    WindowTest::SetUp();
  }
  void TearDown() override {
    window.reset();
    QCoreApplication::removeTranslator(&pseudo_);
  }

private:
  PseudoTranslator pseudo_;
};
INSTANTIATE_TEST_SUITE_P(Languages, MenuLettersIn, ::testing::Bool());

TEST_P(MenuLettersIn, EveryMenuOfTheWindow) {
  open(testing::samplePath("transit-depot.sump"));
  int menus = 0;
  for (QMenu* menu : window->menuBar()->findChildren<QMenu*>()) {
    menu->popup(QPoint(0, 0));
    expectOwnLetters(*menu, menu->title().toStdString());
    menu->hide();
    ++menus;
  }
  EXPECT_GE(menus, 7);
  std::map<QChar, QString> titles;
  for (const QAction* title : window->menuBar()->actions()) {
    EXPECT_TRUE(titles.emplace(letterOf(title->text()), title->text()).second)
        << title->text().toStdString();
  }
}

TEST_P(MenuLettersIn, EveryContextMenu) {
  const auto last = static_cast<int>(Pointed::Other);
  for (int what = 0; what <= last; ++what) {
    QMenu menu;
    for (const std::optional<ActionId>& id : menuFor(static_cast<Pointed>(what))) {
      if (id) menu.addAction(window->action(*id));
    }
    giveLetters(menu);
    expectOwnLetters(menu, "context menu " + std::to_string(what));
  }
}

} // namespace
} // namespace sump
