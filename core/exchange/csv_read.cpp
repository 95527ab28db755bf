#include "core/exchange/csv_read.h"

#include "core/exchange/input_error.h"

namespace sump {

namespace {

class CsvReader {
public:
  CsvReader(std::string_view text, const std::string& file) : text_(text), file_(file) {
    if (text_.starts_with("\xEF\xBB\xBF")) at_ = 3;
  }

  std::vector<CsvRecord> read() {
    while (at_ < text_.size())
      readRecord();
    return std::move(records_);
  }

private:
  void readRecord();
  std::string readCell();
  std::string readQuoted();
  bool atEnd() const { return at_ >= text_.size() || text_[at_] == '\n' || text_[at_] == '\r'; }
  void endLine() {
    if (at_ < text_.size() && text_[at_] == '\r') ++at_;
    if (at_ < text_.size() && text_[at_] == '\n') ++at_;
    ++line_;
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1;
  std::vector<CsvRecord> records_;
};

void CsvReader::readRecord() {
  CsvRecord record{line_, {readCell()}};
  while (!atEnd()) {
    ++at_; // the comma
    record.cells.push_back(readCell());
  }
  endLine();
  if (record.cells.size() > 1 || !record.cells[0].empty()) records_.push_back(std::move(record));
}

std::string CsvReader::readCell() {
  if (at_ < text_.size() && text_[at_] == '"') return readQuoted();
  const std::size_t start = at_;
  while (!atEnd() && text_[at_] != ',')
    ++at_;
  return std::string(text_.substr(start, at_ - start));
}

/// RFC 4180 section 2.7: a quote inside is doubled.
std::string CsvReader::readQuoted() {
  const int started = line_;
  std::string cell;
  for (++at_; at_ < text_.size(); ++at_) {
    if (text_[at_] == '\n') ++line_;
    if (text_[at_] != '"') {
      cell += text_[at_];
      continue;
    }
    if (text_.substr(at_ + 1).starts_with('"')) {
      cell += text_[++at_];
      continue;
    }
    ++at_;
    if (!atEnd() && text_[at_] != ',') {
      throw InputError(file_, "", line_, "text goes on after a closing quote",
                       "put the whole cell in quotes and double the quotes inside");
    }
    return cell;
  }
  throw InputError(file_, "", started, "a quote is not closed",
                   "close it, or double it if it is a "
                   "quote inside a cell");
}

} // namespace

std::vector<CsvRecord> readCsv(std::string_view text, const std::string& file) {
  return CsvReader(text, file).read();
}

} // namespace sump
