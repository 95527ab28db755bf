#pragma once
// Docks behind another one's tab count as visible for Qt: what stands in them would be brought up
// to date at every step of a drag, and nobody would see it.

class QDockWidget;
class QWidget;

namespace sump {

/// What stands in a dock and is brought up to date only while it can be seen.
class Fronted {
public:
  virtual ~Fronted() = default;
  /// The dock came to the front of its tabs, or was opened.
  virtual void cameToFront() = 0;
};

/// A Fronted panel that is filled from the document at once while it can be seen, else when it
/// comes to the front.
class CatchingUp : public Fronted {
public:
  void cameToFront() override {
    if (behind_) catchUp();
  }

protected:
  /// What `panel`, which is this one, shows has changed.
  void fallBehind(const QWidget& panel);
  void caughtUp() { behind_ = false; }
  /// Fills the panel anew, and says so by caughtUp().
  virtual void catchUp() = 0;

private:
  bool behind_ = false;
};

/// True if the user can see it, as far as its place and its tab are concerned.
bool isInFront(const QWidget& widget);

/// Tells the content, if it is Fronted, whenever its dock comes to the front.
void tellWhenInFront(QDockWidget& dock, QWidget* content);

} // namespace sump
