#!/usr/bin/env bash
# Has a Chromium for the tests in a real editor: Debian's, installed where there is none.
set -euo pipefail

if command -v chromium >/dev/null || command -v chromium-browser >/dev/null; then exit 0; fi
if ! command -v apt-get >/dev/null || [ "$(id -u)" -ne 0 ]; then
  echo "The tests in a real editor need Chromium. Install it (on Debian, as root: apt-get install chromium), and try again." >&2
  exit 1
fi
echo "Installing Chromium (once) …"
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq
apt-get install -y -qq --no-install-recommends chromium fonts-dejavu-core >/dev/null
