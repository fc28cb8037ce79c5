# SPDX-License-Identifier: GPL-3.0-or-later
# Writes a C++ file that holds the given resource files byte for byte.
string(REPLACE "," ";" FILES "${FILES}")
set(text "// Generated from resources/.\n#include \"core/base/resource.h\"\n\nnamespace bw {\nnamespace {\n")
set(table "")
set(index 0)
foreach(file IN LISTS FILES)
  file(READ "${ROOT}/${file}" hex HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${hex}")
  string(APPEND text "constexpr char k${index}[] = {${bytes}'\\0'};\n")
  string(APPEND table "    {\"${file}\", {k${index}, sizeof(k${index}) - 1}},\n")
  math(EXPR index "${index} + 1")
endforeach()
string(APPEND text "constexpr ResourceEntry kEntries[] = {\n${table}};\n}  // namespace\n\n"
  "std::span<const ResourceEntry> resources() { return kEntries; }\n}  // namespace bw\n")
file(WRITE "${OUT}" "${text}")
