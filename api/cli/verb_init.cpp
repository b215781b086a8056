#include "api/cli/verbs.hpp"

namespace shoplore {

Result<ExitCode> run(const InitOptions&, Session& session) {
  auto records = Records::create(session.folder);
  if (!records) return fail(records.error());
  // An empty index now, so that a missing one later means that it was lost.
  const auto followed = records->follow(std::chrono::seconds(10));
  if (!followed) return fail(followed.error());
  session.out << "made a shop in " << session.folder.root.string()
              << "; keep a copy of its key file apart from the records: "
              << session.folder.key().string() << "\n";
  return ExitCode::kAnswered;
}

}  // namespace shoplore
