# Writes text files into one C++ source, so that the program stands alone.
# cmake -DOUT=file.cpp -DHEADER=a/b.hpp -DFUNCTION=name -DFILES=a.json;b.json -P embed.cmake
# The header declares the function: pairs of file name and text, in the order given.
string(CONCAT source "// Made by indexer/embed.cmake.\n"
           "#include \"${HEADER}\"\n\nnamespace shoplore {\n\n"
           "const std::vector<std::pair<std::string, std::string>>& ${FUNCTION}() {\n"
           "  static const std::vector<std::pair<std::string, std::string>> files{\n")
foreach(file IN LISTS FILES)
  get_filename_component(name ${file} NAME)
  file(READ ${file} text)
  string(APPEND source "{\"${name}\", std::string()")
  # String literals have a length limit: 8,000 characters a piece.
  string(LENGTH "${text}" length)
  set(at 0)
  while(at LESS length)
    string(SUBSTRING "${text}" ${at} 8000 piece)
    string(APPEND source " + R\"~~(${piece})~~\"")
    math(EXPR at "${at} + 8000")
  endwhile()
  string(APPEND source "},\n")
endforeach()
string(APPEND source "  };\n  return files;\n}\n\n}  // namespace shoplore\n")
file(WRITE ${OUT} "${source}")
