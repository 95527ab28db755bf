#pragma once
// Cut, copy, paste, turn, mirror, align and lock: the commands that change what is selected.

#include "app/canvas/canvas.h"
#include "app/window/action_set.h"
#include "app/window/document.h"

#include "core/plan/edits_group.h"

#include <QObject>

namespace sump {

class Editing : public QObject {
  Q_OBJECT

public:
  Editing(Document& document, Canvas& canvas, ActionSet& actions);

  bool copy() const;
  void cut();
  /// With the middle of what was copied at the pointer.
  void paste();
  /// Where it was copied from.
  void pasteInPlace();
  void turn(Angle by);
  /// About the line through the middle of the selection, northward or eastward.
  void mirror(bool northward);
  void align(Alignment to);
  /// The selected vault that is first in the flow stays.
  void alignWithFirstVault(bool abreast);
  void distribute(bool northward);
  void lock(bool locked);
  /// Adds all objects of the kinds, or of lines the services, that are selected.
  void selectSame();

signals:
  void told(const QString& sentence);

private:
  void join(ActionSet& actions);
  /// The selected objects that are not locked; tells when there are none.
  std::set<Id> free();
  void commit(const QString& step, Plan plan);
  /// What was copied; tells when it is nothing that can be pasted.
  std::optional<Plan> copied();
  void paste(const Plan& fragment, Point2 by);

  Document& document_;
  Canvas& canvas_;
};

} // namespace sump
