#include "core/exchange/input_error.h"

namespace sump {

namespace {

/// `transit.sump:41: /vaults/0/width: is -2, must be more than 0; give the outside width`
std::string message(const std::string& file, const std::string& pointer, int line,
                    const std::string& what, const std::string& mend) {
  std::string text = file;
  if (line > 0) text += ":" + std::to_string(line);
  text += ": ";
  if (!pointer.empty()) text += pointer + ": ";
  text += what;
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
