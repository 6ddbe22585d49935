#!/bin/bash
# Renders on all cores but one while training goes on; everything by hand, see README.md.
# run-on-device.sh NODE BUNDLE PICTURES OUT SECONDS WAIT COMMIT
set -u
NODE=$1; BUNDLE=$2; PICTURES=$3; OUT=$4; SECONDS_=$5; WAIT=$6; COMMIT=$7
HERE=$(cd "$(dirname "$0")" && pwd)
CORES=$(( $(nproc) - 1 ))
mkdir -p "$PICTURES" "$OUT"
for i in $(seq 0 $((CORES - 1))); do
  ( "$NODE" "$BUNDLE" "$PICTURES" $i $CORES 90 kept-street 9001; "$NODE" "$BUNDLE" "$PICTURES" $i $CORES 48 kept-plain 9002; "$NODE" "$BUNDLE" "$PICTURES" $i $CORES 9000 train 1 $SECONDS_ ) 2>>"$OUT/render.log" &
done
PYTHONUNBUFFERED=1 python3 "$HERE/train.py" "$PICTURES" "$OUT" "$SECONDS_" --wait "$WAIT" --commit "$COMMIT" >"$OUT/train.log" 2>&1
kill $(jobs -p) 2>/dev/null
