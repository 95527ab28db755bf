// The basis of the calculations as a form, by real mouse and key events.

#include "tests/app/window_fixture.h"

#include "app/panels/basis_panel.h"
#include "core/units/temperature.h"

#include <QComboBox>
#include <QDockWidget>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

namespace sump {

using testing::samplePath;

class BasisForm : public testing::WindowTest {
protected:
  BasisPanel& panel() {
    auto* found = window->findChild<BasisPanel*>("basis");
    window->findChild<QDockWidget*>("dock-basis")->show();
    window->findChild<QDockWidget*>("dock-basis")->raise();
    QCoreApplication::processEvents();
    return *found;
  }
  void openGroup(int index) {
    panel().findChild<QListWidget*>("basis-groups")->setCurrentRow(index);
    QCoreApplication::processEvents();
  }
  void type(const std::string& key, const char* text) {
    auto* line = qobject_cast<QLineEdit*>(panel().editor(key));
    ASSERT_NE(line, nullptr) << key;
    line->setFocus();
    line->selectAll();
    QTest::keyClick(line, Qt::Key_Delete);
    QTest::keyClicks(line, text);
    QTest::keyClick(line, Qt::Key_Return);
    QCoreApplication::processEvents();
  }
  void choose(const std::string& key, int index) {
    auto* combo = qobject_cast<QComboBox*>(panel().editor(key));
    ASSERT_NE(combo, nullptr) << key;
    combo->setFocus();
    QTest::keyClick(combo, Qt::Key_Home);
    for (int i = 0; i < index; ++i)
      QTest::keyClick(combo, Qt::Key_Down);
    emit combo->activated(combo->currentIndex());
    QCoreApplication::processEvents();
    // The form may have made its rows anew; a draft row that is now in the plan has another key.
    combo = qobject_cast<QComboBox*>(panel().editor(key));
    if (combo == nullptr) return;
    ASSERT_EQ(combo->currentIndex(), index);
  }
  void press(const char* name) {
    auto* button = panel().findChild<QPushButton*>(name);
    ASSERT_NE(button, nullptr) << name;
    QTest::mouseClick(button, Qt::LeftButton);
    QCoreApplication::processEvents();
  }
  std::vector<BasisGroup> groups() { return basisGroups({plan(), document().catalog(), nullptr}); }
  Plan without() {
    Plan next = plan();
    next.basis = Basis{};
    next.site.groundwater.reset();
    return next;
  }
};

TEST_F(BasisForm, EmptyIsUnknownAndSaysWhatWaits) {
  open(samplePath("transit-depot.sump"));
  document().commit("Forget", without());
  openGroup(0);
  auto* line = qobject_cast<QLineEdit*>(panel().editor("water.temperature"));
  ASSERT_NE(line, nullptr);
  EXPECT_TRUE(line->text().isEmpty());
  EXPECT_EQ(line->accessibleName(), "Water temperature");
  const auto waiting = [this] {
    int count = 0;
    for (QLabel* label : panel().findChildren<QLabel*>("field-need"))
      count += label->isVisibleTo(&panel()) && label->text().startsWith("Not known") ? 1 : 0;
    return count;
  };
  const int before = waiting();
  EXPECT_EQ(before, groups()[0].unknown());
  type("water.temperature", "68");
  ASSERT_TRUE(plan().basis.water.temperature);
  EXPECT_NEAR(inFahrenheit(*plan().basis.water.temperature), 68, 1e-9);
  EXPECT_EQ(line->text(), shown(printTemperature(fahrenheit(68), UnitSystem::UsCustomary)));
  EXPECT_EQ(waiting(), before - 1);
  EXPECT_EQ(document().undoStep(), "Change water temperature");
  type("water.temperature", "");
  EXPECT_FALSE(plan().basis.water.temperature) << "empty takes the figure back";
  document().undo();
  document().undo();
  EXPECT_FALSE(plan().basis.water.temperature);
}

TEST_F(BasisForm, NonsenseStaysWithItsReason) {
  open(samplePath("transit-depot.sump"));
  openGroup(0);
  const Plan before = plan();
  type("water.lowLevel", "quite low");
  EXPECT_EQ(plan(), before);
  bool told = false;
  for (QLabel* label : panel().findChildren<QLabel*>("field-error"))
    told = told || (label->isVisibleTo(&panel()) && label->text().startsWith("Not changed"));
  EXPECT_TRUE(told);
  type("water.lowLevel", "-1 ft"); // a plan that would be none
  EXPECT_EQ(plan(), before);
  type("water.lowLevel", "1'-6\"");
  EXPECT_NEAR(inFeet(*plan().basis.water.lowLevel), 1.5, 1e-9);
}

TEST_F(BasisForm, PumpCurveGrowsByDraftsAndRowsGo) {
  open(samplePath("transit-depot.sump"));
  document().commit("Forget", without());
  openGroup(2);
  press("pump.curve.add");
  type("pump.curve.new.0", "0");
  EXPECT_TRUE(plan().basis.pump.curve.empty()) << "a point without a head is none";
  type("pump.curve.new.1", "95 ft");
  ASSERT_EQ(plan().basis.pump.curve.size(), 1u);
  EXPECT_NEAR(inFeet(plan().basis.pump.curve[0].head), 95, 1e-9);
  EXPECT_FALSE(plan().basis.pump.curve[0].npshRequired);
  EXPECT_EQ(document().undoStep(), "Add pump point");
  press("pump.curve.add");
  type("pump.curve.new.2", "8");
  type("pump.curve.new.0", "60 gpm");
  type("pump.curve.new.1", "80");
  ASSERT_EQ(plan().basis.pump.curve.size(), 2u);
  EXPECT_NEAR(inFeet(*plan().basis.pump.curve[1].npshRequired), 8, 1e-9);
  type("pump.curve.1.1", "200"); // a curve that rises is refused
  EXPECT_NEAR(inFeet(plan().basis.pump.curve[1].head), 80, 1e-9);
  press("pump.curve.0.remove");
  ASSERT_EQ(plan().basis.pump.curve.size(), 1u);
  EXPECT_NEAR(inGallonsPerMinute(plan().basis.pump.curve[0].flow), 60, 1e-9);
  EXPECT_EQ(document().undoStep(), "Remove pump point");
}

TEST_F(BasisForm, DevicesVehiclesSuppliesAndSignalsAreTyped) {
  open(samplePath("transit-depot.sump"));
  document().commit("Forget", without());
  openGroup(1);
  press("demand.devices.add");
  type("demand.devices.new.0", "Side arch");
  type("demand.devices.new.2", "25 gpm");
  ASSERT_EQ(plan().basis.demand.devices.size(), 1u);
  EXPECT_EQ(plan().basis.demand.devices[0].name, "Side arch");
  choose("demand.devices.0.1", 1);
  EXPECT_EQ(plan().basis.demand.devices[0].wash, plan().washes[0].id);
  type("demand.devices.0.5", "60 %");
  EXPECT_NEAR(plan().basis.demand.devices[0].duty, 0.6, 1e-12);
  press("demand.vehicles.add");
  type("demand.vehicles.new.0", "Bus");
  ASSERT_EQ(plan().basis.demand.vehicles.size(), 1u);
  type("demand.vehicles.0.3", "90 gal");
  EXPECT_NEAR(inGallons(*plan().basis.demand.vehicles[0].water), 90, 1e-9);
  openGroup(5);
  press("wiring.supplies.add");
  choose("wiring.supplies.new.1", 1);
  type("wiring.supplies.new.2", "460");
  ASSERT_EQ(plan().basis.wiring.supplies.size(), 1u);
  EXPECT_EQ(plan().basis.wiring.supplies[0].kind, SupplyKind::Motor3Phase);
  press("wiring.signalCircuits.add");
  choose("wiring.signalCircuits.new.1", 0);
  ASSERT_EQ(plan().basis.wiring.signalCircuits.size(), 1u);
  EXPECT_EQ(plan().basis.wiring.signalCircuits[0].kind, SignalKind::Dc24);
  EXPECT_TRUE(inconsistencies(plan()).empty());
}

// Every figure must take back what it shows, in both units.
TEST_F(BasisForm, EveryFigureAcceptsItsOwnText) {
  open(samplePath("transit-depot.sump"));
  int written = 0;
  for (UnitSystem units : {UnitSystem::UsCustomary, UnitSystem::Metric}) {
    Plan full = plan();
    full.project.units = units;
    full.basis.demand.devices = {{"WD-1", "Arch", "", gallonsPerMinute(20), psi(40)}};
    full.basis.demand.vehicles = {{"Bus", 6, 60, gallons(90), gallons(0.5)}};
    full.basis.pump.curve = {{gallonsPerMinute(10), feet(90), feet(5)}};
    full.basis.wiring.supplies.resize(1);
    full.basis.wiring.supplies[0].id = "PS-1";
    full.basis.wiring.supplies[0].disconnect = Point2{3.25, -4.5};
    full.basis.wiring.signalCircuits.resize(1);
    full.basis.wiring.signalCircuits[0].id = "SC-1";
    full.basis.earth.ladders = {{1, 2}, {3.5, 4}};
    full.basis.earth.spoil = {{0, 0}, {4, 0}, {4, 3}};
    full.basis.water.suspendedSolids = 0.45;
    const auto check = [&](const Field& field) {
      const QString text =
          field.kind == FieldKind::Choice ? QString::number(field.current) : field.text;
      if (field.kind == FieldKind::Choice) {
        ASSERT_GE(field.current, 0) << field.label.toStdString();
      }
      const FieldResult result = field.write(full, text);
      ASSERT_TRUE(result.plan) << field.label.toStdString() << ": " << result.error.toStdString();
      EXPECT_TRUE(inconsistencies(*result.plan).empty()) << field.label.toStdString();
      ++written;
    };
    for (const BasisGroup& group : basisGroups({full, document().catalog(), nullptr})) {
      for (const BasisItem& item : group.items)
        check(item.field);
      for (const BasisTable& table : group.tables) {
        ASSERT_FALSE(table.rows.empty()) << table.key;
        for (const Field& cell : table.rows[0])
          check(cell);
      }
    }
  }
  EXPECT_GT(written, 100);
}

TEST_F(BasisForm, LeadsToTheFigureThatASentenceNames) {
  open(samplePath("transit-depot.sump"));
  EXPECT_EQ(basisKeyNamed(groups(), "needs the water temperature"), "water.temperature");
  EXPECT_EQ(basisKeyNamed(groups(), "pump curve, altitude"), "pump.curve");
  EXPECT_EQ(basisKeyNamed(groups(), "a wider door"), "");
  panel().goTo("earth.soil");
  QCoreApplication::processEvents();
  ASSERT_NE(panel().editor("earth.soil"), nullptr);
  EXPECT_EQ(window->focusWidget(), panel().editor("earth.soil"));
}

} // namespace sump
