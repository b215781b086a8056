// The document and the program know the same routes, bodies and parameters.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "api/http/dispatch.hpp"
#include "api/http/openapi_document.hpp"

namespace shoplore {
namespace {

using nlohmann::json;

json document() {
  std::ifstream file(SHOPLORE_OPENAPI);
  return json::parse(file);
}

// "GET /v1/cases", its body's type and its query parameters, a line a route.
std::set<std::string> routes_of_the_program() {
  std::set<std::string> routes;
  for (const RouteDescription& route : route_descriptions()) {
    std::istringstream words{std::string(route.parameters)};
    std::set<std::string> names;
    for (std::string name; words >> name;) {
      names.insert(name.back() == '*' ? name.substr(0, name.size() - 1) : name);
    }
    std::string line = std::string(route.method) + " " + std::string(route.path) + " takes " +
                       std::string(route.takes) + ":";
    for (const std::string& name : names) line += " " + name;
    routes.insert(line);
  }
  return routes;
}

std::set<std::string> routes_of_the_document(const json& doc) {
  std::set<std::string> routes;
  for (const auto& [path, item] : doc["paths"].items()) {
    for (const auto& [method, operation] : item.items()) {
      if (method == "parameters") continue;
      std::set<std::string> names;
      for (const json& given : operation.value("parameters", json::array())) {
        const bool elsewhere = given.contains("$ref");
        const json parameter =
            elsewhere ? doc[json::json_pointer(given["$ref"].get<std::string>().substr(1))] : given;
        if (parameter["in"] == "query") names.insert(parameter["name"].get<std::string>());
      }
      std::string line = method;
      std::transform(line.begin(), line.end(), line.begin(),
                     [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
      line += " " + path + " takes ";
      if (operation.contains("requestBody")) {
        for (const auto& [type, unused] : operation["requestBody"]["content"].items()) line += type;
      }
      line += ":";
      for (const std::string& name : names) line += " " + name;
      routes.insert(line);
    }
  }
  return routes;
}

TEST(OpenapiRoutes, TheDocumentHasExactlyTheRoutesOfTheProgram) {
  EXPECT_EQ(routes_of_the_document(document()), routes_of_the_program());
}

TEST(OpenapiRoutes, TheProgramCarriesTheDocumentWordForWord) {
  std::ifstream file(SHOPLORE_OPENAPI);
  std::stringstream text;
  text << file.rdbuf();
  ASSERT_EQ(openapi_files().size(), 1U);
  EXPECT_EQ(openapi_files().front().first, "openapi.json");
  EXPECT_EQ(openapi_files().front().second, text.str());
}

}  // namespace
}  // namespace shoplore
