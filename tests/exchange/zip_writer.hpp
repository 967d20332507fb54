#pragma once

#include <zlib.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// A part of an archive as a test writes it.
struct ZipPart {
  std::string name, bytes;
  unsigned flags = 0;  ///< bit 0: encrypted
};

/// A zip archive of deflated parts, by PKWARE's published description of the format (recalled): local
/// headers, the central directory, its end. Independent of the library that the program reads with.
inline std::string zip_of(const std::vector<ZipPart>& parts) {
  std::string archive, directory;
  const auto put = [](std::string& to, std::uint64_t value, int bytes) {
    for (int i = 0; i < bytes; ++i) to += static_cast<char>((value >> (8 * i)) & 0xff);
  };
  for (const ZipPart& part : parts) {
    z_stream stream{};
    deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY);
    std::string packed(deflateBound(&stream, part.bytes.size()), '\0');
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(part.bytes.data()));
    stream.avail_in = static_cast<uInt>(part.bytes.size());
    stream.next_out = reinterpret_cast<Bytef*>(packed.data());
    stream.avail_out = static_cast<uInt>(packed.size());
    deflate(&stream, Z_FINISH);
    packed.resize(stream.total_out);
    deflateEnd(&stream);
    const auto sum =
        crc32(0, reinterpret_cast<const Bytef*>(part.bytes.data()), static_cast<uInt>(part.bytes.size()));
    // What both headers say: version needed, flags, method 8, time, date, check sum, sizes, lengths.
    std::string common;
    put(common, 20, 2);
    put(common, part.flags, 2);
    put(common, 8, 2);
    put(common, 0, 4);
    put(common, sum, 4);
    put(common, packed.size(), 4);
    put(common, part.bytes.size(), 4);
    put(common, part.name.size(), 2);
    put(common, 0, 2);
    directory += std::string("PK\x01\x02", 4);
    put(directory, 20, 2);
    directory += common;
    put(directory, 0, 2 + 2 + 2 + 4);  // comment, disk, attributes
    put(directory, archive.size(), 4);
    directory += part.name;
    archive += std::string("PK\x03\x04", 4) + common + part.name + packed;
  }
  const std::size_t begin = archive.size();
  archive += directory + std::string("PK\x05\x06", 4);
  put(archive, 0, 4);
  put(archive, parts.size(), 2);
  put(archive, parts.size(), 2);
  put(archive, directory.size(), 4);
  put(archive, begin, 4);
  put(archive, 0, 2);
  return archive;
}

/// A workbook of hand-written sheets: the XML within <worksheet>, of each sheet by its name.
struct TestSheet {
  std::string name, xml;
  std::string state = "visible";
};

inline std::vector<ZipPart> xlsx_parts(const std::vector<TestSheet>& sheets, const std::string& strings = "",
                                       const std::string& styles = "", bool begins_1904 = false) {
  const std::string types = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
  std::string list, relations;
  std::vector<ZipPart> parts;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    list += "<sheet name=\"" + sheets[i].name + "\" sheetId=\"" + number + "\" r:id=\"rId" + number +
            "\" state=\"" + sheets[i].state + "\"/>";
    relations += "<Relationship Id=\"rId" + number + "\" Type=\"" + types +
                 "worksheet\" Target=\"worksheets/sheet" + number + ".xml\"/>";
    parts.push_back(
        {"xl/worksheets/sheet" + number + ".xml", "<worksheet>" + sheets[i].xml + "</worksheet>"});
  }
  relations += "<Relationship Id=\"s\" Type=\"" + types +
               "sharedStrings\" Target=\"/xl/sharedStrings.xml\"/>" + "<Relationship Id=\"f\" Type=\"" +
               types + "styles\" Target=\"styles.xml\"/>";
  parts.push_back({"_rels/.rels", "<Relationships><Relationship Id=\"a\" Type=\"" + types +
                                      "officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"});
  parts.push_back({"xl/_rels/workbook.xml.rels", "<Relationships>" + relations + "</Relationships>"});
  parts.push_back({"xl/workbook.xml", "<x:workbook xmlns:x=\"a\" xmlns:r=\"b\"><x:workbookPr date1904=\"" +
                                          std::string(begins_1904 ? "1" : "0") + "\"/><x:sheets>" + list +
                                          "</x:sheets></x:workbook>"});
  parts.push_back({"xl/sharedStrings.xml", "<sst>" + strings + "</sst>"});
  parts.push_back({"xl/styles.xml", "<styleSheet>" + styles + "</styleSheet>"});
  return parts;
}

inline std::string xlsx_of(const std::vector<TestSheet>& sheets, const std::string& strings = "",
                           const std::string& styles = "", bool begins_1904 = false) {
  return zip_of(xlsx_parts(sheets, strings, styles, begins_1904));
}

/// A cell with an inline string, or with a number.
inline std::string text_in(const std::string& place, const std::string& text) {
  return "<c r=\"" + place + "\" t=\"inlineStr\"><is><t>" + text + "</t></is></c>";
}
inline std::string number_in(const std::string& place, const std::string& number,
                             const std::string& more = "") {
  return "<c r=\"" + place + "\"" + more + "><v>" + number + "</v></c>";
}

/// Rows of cells: a text that is a number becomes a number, an empty one no cell.
inline std::string sheet_data(const std::vector<std::vector<std::string>>& rows, std::size_t first_row = 1) {
  std::string xml;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::string number = std::to_string(first_row + i);
    xml += "<row r=\"" + number + "\">";
    for (std::size_t k = 0; k < rows[i].size(); ++k) {
      const std::string place = std::string(1, static_cast<char>('A' + k)) + number, &text = rows[i][k];
      if (text.empty()) continue;
      const bool is_number = text.find_first_not_of("0123456789.-") == std::string::npos;
      xml += is_number ? number_in(place, text) : text_in(place, text);
    }
    xml += "</row>";
  }
  return xml;
}

}  // namespace seamtakt
