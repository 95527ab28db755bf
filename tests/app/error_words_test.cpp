// What is wrong with a file, in words for people who never look into one.

#include "app/core_text.h"
#include "core/exchange/input_error.h"
#include "core/exchange/plan_file.h"

#include <QString>

#include <gtest/gtest.h>

namespace sump {
namespace {

std::string told(const InputError& error) {
  return errorWords(error).toStdString();
}

std::string toldOf(const char* planText) {
  try {
    readPlanText(planText, "depot.sump");
  } catch (const InputError& e) {
    return told(e);
  }
  return "";
}

TEST(ErrorWords, SayWhereWhatAndHowToMendIt) {
  EXPECT_EQ(told({"depot.sump", "/vaults/0/lidThickness", 12, "is -2, must be more than 0",
                  "give the lid's thickness"}),
            "depot.sump, line 12\n"
            "Vault 1, lid thickness: is -2, must be more than 0.\n\n"
            "To mend it: give the lid's thickness.");
}

TEST(ErrorWords, NameThingsAsTheWindowDoes) {
  EXPECT_EQ(told({"a.sump", "/runs/4/vertices/1/z", 9, "is a text, must be a number", ""}),
            "a.sump, line 9\nLine 5, corner 2, z: is a text, must be a number.");
  EXPECT_EQ(told({"a.sump", "/utilities/0/name", 0, "is missing", ""}),
            "a.sump\nUtility 1, name: is missing.");
  EXPECT_EQ(told({"a.sump", "/washes/2", 0, "is twice there", ""}),
            "a.sump\nWash 3: is twice there.");
}

TEST(ErrorWords, WithoutAPlaceTheFileIsTheSubject) {
  EXPECT_EQ(told({"a.sump", "", 0, "is empty", "give a plan file"}),
            "a.sump: is empty.\n\nTo mend it: give a plan file.");
}

TEST(ErrorWords, AFileThatIsNoPlanIsToldWithoutItsKeys) {
  for (const char* text : {"{\"format\": \"something\"}", "{}", "[1, 2]"}) {
    const std::string words = toldOf(text);
    EXPECT_NE(words.find("is not a Sumpwright plan"), std::string::npos) << words;
    EXPECT_NE(words.find(".sump"), std::string::npos) << words;
    EXPECT_EQ(words.find("ormat"), std::string::npos) << words;
  }
}

TEST(ErrorWords, ASlipInTheTextIsToldWithoutTheParsersWords) {
  const std::string words = toldOf("{\"format\": \"sumpwright-plan\",\n\"version\" 1}");
  EXPECT_NE(words.find("line 2"), std::string::npos) << words;
  EXPECT_NE(words.find("cannot be read from this line on"), std::string::npos) << words;
  for (const char* jargon : {"JSON", "syntax", "parsing", "token"})
    EXPECT_EQ(words.find(jargon), std::string::npos) << words;
}

TEST(CoreText, AFigureAndItsUnitStayOnOneLine) {
  EXPECT_EQ(unitsHeld("type it like 45 gpm or 2.8 L/s"),
            QString("type it like 45\u00a0gpm or 2.8\u00a0L/\u2060s"));
  EXPECT_EQ(unitsHeld("like 12'-6 1/2\", 150 in, 3 in all"),
            QString("like 12'-6\u00a01/\u20602\", 150\u00a0in, 3 in all"));
  EXPECT_EQ(unitsHeld("12 men at 3 minutes"), "12 men at 3 minutes");
}

TEST(CoreText, UnitsOfTablesStandWithTheirPowersRaised) {
  EXPECT_EQ(powersRaised("168.5 yd3"), QString::fromUtf8("168.5 yd³"));
  EXPECT_EQ(powersRaised("Density of grit, kg/m3"), QString::fromUtf8("Density of grit, kg/m³"));
  EXPECT_EQ(powersRaised("0.5 ft2 or 12 in2"), QString::fromUtf8("0.5 ft² or 12 in²"));
  EXPECT_EQ(powersRaised("IM3, m23 and vault m32"), "IM3, m23 and vault m32");
}

TEST(ErrorWords, OtherTroubleIsToldAsItIs) {
  EXPECT_EQ(errorWords(std::runtime_error("the disk is gone")).toStdString(), "the disk is gone");
}

} // namespace
} // namespace sump
