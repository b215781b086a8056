# Sourced by corpus-demo/run and tests/run: installs what is missing, configures and builds.
# Says nothing when nothing is missing. Every step can be repeated at once.

repository=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)

# Installs the packages of .ci/packages.txt, and those given, that dpkg does not know as installed.
install_missing_packages() {
  local wanted missing=() package
  mapfile -t wanted < <(grep -vE '^(#|$)' "$repository/.ci/packages.txt")
  for package in "${wanted[@]}" "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'install ok installed' ||
      missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0

  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "missing packages: ${missing[*]}" >&2
      echo "installing them needs root or sudo: run this as root, or install them by hand" >&2
      return 2
    fi
    as_root=(sudo)
  fi
  echo "installing ${#missing[@]} packages: ${missing[*]}" >&2
  # A failed refresh alone is no reason to stop: the lists at hand may do.
  "${as_root[@]}" apt-get update -qq >&2 || true
  local unknown=()
  for package in "${missing[@]}"; do
    apt-cache show "$package" >/dev/null 2>&1 || unknown+=("$package")
  done
  if [ ${#unknown[@]} -gt 0 ]; then
    echo "no such package in the configured Debian sources: ${unknown[*]}" >&2
    return 2
  fi
  if ! DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -qq \
      --no-install-recommends "${missing[@]}" >"$repository/.build.install.log" 2>&1; then
    echo "apt-get could not install: ${missing[*]}" >&2
    tail -n 15 "$repository/.build.install.log" >&2
    return 2
  fi
  rm -f "$repository/.build.install.log"
}

# build FOLDER TARGET... [-- CMAKE_OPTION...]: configures once, then builds the targets.
build() {
  local folder=$1 targets=() options=()
  shift
  while [ $# -gt 0 ] && [ "$1" != -- ]; do targets+=("$1"); shift; done
  [ $# -gt 0 ] && shift && options=("$@")
  local log="$repository/.build.configure.log"
  if ! cmake -S "$repository" -B "$folder" -G Ninja "${options[@]}" >"$log" 2>&1; then
    cat "$log" >&2
    return 2
  fi
  rm -f "$log"
  # Without a terminal ninja prints a line a step; a fresh build is long enough to want them.
  cmake --build "$folder" --target "${targets[@]}" -- ${SHOPLORE_BUILD_QUIET:+--quiet} >&2
}
