#include "app/core_text.h"

#include "core/plan/consistency.h"
#include "core/rules/messages.h"

#include <QCoreApplication>

namespace sump {

namespace {

QString q(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString translated(const char* context, std::string_view english) {
  if (english.empty()) return {};
  return QCoreApplication::translate(context, std::string(english).c_str());
}

} // namespace

QString coreText(std::string_view english) {
  return translated("Core", english);
}

QString coreWord(std::string_view key) {
  QString name = q(key);
  name.replace('-', ' ');
  if (!name.isEmpty()) name[0] = name[0].toUpper();
  return coreText(name.toStdString());
}

QString messageText(const Message& message) {
  const std::string_view pattern = messagePattern(message.id);
  if (pattern.empty()) return q(sump::render(message));
  const std::string mine = translated("Messages", pattern).toStdString();
  return q(filledMessage(mine, message.arguments));
}

QString problemWords(const Problem& problem, const QString& between) {
  return coreText(problem.what) + between + coreText(problem.mend);
}

} // namespace sump
