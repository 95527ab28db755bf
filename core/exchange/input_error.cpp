#include "core/exchange/input_error.h"

namespace sump {

namespace {

/// What the file says may stand in a message: one line, and not a page of it. Cut between UTF-8
/// characters.
std::string tamed(std::string text, std::size_t most) {
  if (text.size() > most) {
    while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0) == 0x80)
      --most;
    text = text.substr(0, most) + "...";
  }
  for (char& c : text) {
    if ((c >= 0 && c < 0x20) || c == 0x7f) c = '?';
  }
  return text;
}

/// `transit.sump:41: /vaults/0/width: is -2, must be more than 0; give the outside width`
std::string message(const std::string& file, const std::string& pointer, int line,
                    const std::string& what, const std::string& mend) {
  std::string text = file;
  if (line > 0) text += ":" + std::to_string(line);
  text += ": ";
  if (!pointer.empty()) text += tamed(pointer, 200) + ": ";
  text += tamed(what, 300);
  if (!mend.empty()) text += "; " + mend;
  return text;
}

} // namespace

InputError::InputError(std::string file_, std::string pointer_, int line_, std::string what_,
                       std::string mend_)
    : std::runtime_error(message(file_, pointer_, line_, what_, mend_)), file(std::move(file_)),
      pointer(std::move(pointer_)), line(line_), problem(std::move(what_)), mend(std::move(mend_)) {
}

} // namespace sump
