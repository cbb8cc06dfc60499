#!/bin/sh
# Called as if it were VS Code's own program, with the words that its test driver gives.
here=$(dirname "$0")
exec "$here/../../node_modules/node/bin/node" --import tsx "$here/launch.ts" "$@"
