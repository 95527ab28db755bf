// Keys that the user chooses.

#include "app/window/help_dialogs.h"
#include "app/window/settings_dialog.h"
#include "app/window/user_keys.h"
#include "tests/app/window_fixture.h"

#include <QCheckBox>
#include <QDialog>
#include <QKeySequenceEdit>
#include <QLabel>
#include <QPushButton>
#include <QTreeWidget>

namespace sump {
namespace {

class SettingsTest : public testing::WindowTest {
protected:
  void SetUp() override {
    WindowTest::SetUp();
    window->action(ActionId::Settings)->trigger();
    dialog = window->findChild<SettingsDialog*>();
    ASSERT_NE(dialog, nullptr);
  }
  void press(const char* text) {
    for (QPushButton* button : dialog->findChildren<QPushButton*>()) {
      if (button->text() == text) return button->click();
    }
    ADD_FAILURE() << "no button " << text;
  }
  void give(const char* action, const QKeySequence& key) {
    dialog->choose(action);
    dialog->findChild<QKeySequenceEdit*>()->setKeySequence(key);
    press("Set key");
  }
  QString answer() { return dialog->findChild<QLabel*>("key-answer")->text(); }
  QList<QKeySequence> keys(ActionId id) { return window->action(id)->shortcuts(); }

  SettingsDialog* dialog = nullptr;
};

TEST_F(SettingsTest, ANewKeyWorksAtOnceAndLasts) {
  const QKeySequence key("Ctrl+Alt+V");
  give("tool-vault", key);
  EXPECT_EQ(keys(ActionId::ToolVault), QList{key});
  EXPECT_TRUE(window->action(ActionId::ToolVault)->toolTip().contains("Ctrl+Alt+V"));
  const MainWindow again(talk);
  EXPECT_EQ(again.action(ActionId::ToolVault)->shortcuts(), QList{key});
  // The list of keys derives from the same.
  const std::unique_ptr<QDialog> help(keysDialog(window.get()));
  EXPECT_FALSE(help->findChild<QTreeWidget*>()
                   ->findItems("Ctrl+Alt+V", Qt::MatchExactly | Qt::MatchRecursive)
                   .isEmpty());
  dialog->close();
  window->activateWindow();
  window->action(ActionId::ToolSelect)->trigger();
  QTest::keyClick(window.get(), Qt::Key_V, Qt::ControlModifier | Qt::AltModifier);
  EXPECT_TRUE(window->action(ActionId::ToolVault)->isChecked());
}

TEST_F(SettingsTest, AKeyThatIsTakenIsNamedAndChangesNothing) {
  const QList<QKeySequence> before = keys(ActionId::ToolVault);
  give("tool-vault", QKeySequence("Ctrl+D"));
  EXPECT_TRUE(answer().contains("Duplicate")) << answer().toStdString();
  EXPECT_EQ(keys(ActionId::ToolVault), before);
  // A usual key that was given away does not come back by stealth.
  dialog->choose("duplicate");
  press("No key");
  EXPECT_TRUE(keys(ActionId::Duplicate).isEmpty());
  give("tool-vault", QKeySequence("Ctrl+D"));
  EXPECT_EQ(keys(ActionId::ToolVault), QList{QKeySequence("Ctrl+D")});
  dialog->choose("duplicate");
  press("Usual key");
  EXPECT_TRUE(answer().contains("Vault")) << answer().toStdString();
  EXPECT_TRUE(keys(ActionId::Duplicate).isEmpty());
  press("All usual keys");
  EXPECT_EQ(keys(ActionId::ToolVault), before);
  EXPECT_EQ(keys(ActionId::Duplicate), QList{QKeySequence("Ctrl+D")});
}

TEST_F(SettingsTest, ListsEveryCommandOnceWithoutDoubleKeys) {
  auto* list = dialog->findChild<QTreeWidget*>();
  std::map<QString, int> seen;
  for (QTreeWidgetItemIterator it(list); *it != nullptr; ++it) {
    const QString name = (*it)->data(0, Qt::UserRole).toString();
    if (!name.isEmpty()) ++seen[name];
  }
  EXPECT_EQ(seen.size(), actionTable().size());
  for (const ActionRow& row : actionTable()) {
    EXPECT_EQ(seen[row.name], 1) << row.name;
    for (const QKeySequence& key : usualKeysOf(row)) {
      const ActionRow* other = ownerOf(key, row);
      EXPECT_EQ(other, nullptr) << row.name << " and " << (other == nullptr ? "" : other->name);
    }
  }
}

TEST_F(SettingsTest, TheLookFollowsItsBoxes) {
  QCheckBox* dark = dialog->findChildren<QCheckBox*>()[0];
  const bool before = window->action(ActionId::DarkWindow)->isChecked();
  EXPECT_EQ(dark->isChecked(), before);
  dark->click();
  EXPECT_EQ(window->action(ActionId::DarkWindow)->isChecked(), !before);
  dark->click();
}

} // namespace
} // namespace sump
