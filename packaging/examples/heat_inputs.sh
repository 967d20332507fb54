#!/bin/sh
# Heat input at several travel speeds, one process for all of them.
#   packaging/examples/heat_inputs.sh            SEAMTAKT names the program where it isn't in the PATH
# Each request is a line of JSON, and so is each answer, in the same order.
seamtakt=${SEAMTAKT:-seamtakt}

for speed in 25 30 35 40; do
  printf '{"id": %s, "command": "calc heat-input", "arguments": {"voltage": "24.8V", "current": "205A", "travel-speed": "%scm/min", "process": "135"}}\n' \
    "$speed" "$speed"
done | "$seamtakt" serve --stdio |
  sed -n 's/^{"id": \([0-9]*\), "exit_code": [01], .*"heat_input_kJ_mm": \([0-9.]*\).*/\1 \2/p' |
  while read -r speed heat_input; do LC_ALL=C printf '%s cm/min: %.4f kJ/mm\n' "$speed" "$heat_input"; done
