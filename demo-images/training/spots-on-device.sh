#!/bin/bash
# Renders near pictures on most cores while the finder of holes and spatter trains, then studies it. By hand only: see README.md.
# spots-on-device.sh NODE FOLDER_OF_BUNDLES PICTURES OUT SECONDS SEED COMMIT [FURTHER ARGUMENTS OF train_spots.py]
set -u
NODE=$1; BUNDLES=$2; PICTURES=$3; OUT=$4; TRAIN=$5; SEED=$6; COMMIT=$7; shift 7
HERE=$(cd "$(dirname "$0")" && pwd)
ALL=$(nproc)
mkdir -p "$PICTURES" "$OUT"
RENDERERS=()
for i in $(seq 0 $((ALL - 3))); do
  ( exec nice -n 5 "$NODE" "$BUNDLES/make-spots.mjs" "$PICTURES" $i $((ALL - 2)) 20000 "$SEED" ) 2>>"$OUT/render.log" &
  RENDERERS+=($!)
done
export PYTHONUNBUFFERED=1
( cd "$HERE" && python3 train_spots.py "$PICTURES" "$OUT" "$TRAIN" --commit "$COMMIT" "$@" >"$OUT/train.log" 2>&1 )
kill "${RENDERERS[@]}" 2>/dev/null
export SPOTS_WEIGHTS="$OUT/spots.onnx"
STUDIES=()
for i in $(seq 0 $((ALL - 1))); do
  ( cd "$BUNDLES" && for k in "calibration 65" "kept-street 75" "kept-bench 35"; do
      set -- $k; timeout 90 "$NODE" make-spot-study.mjs "$PICTURES/study-$1-$i" $i $ALL $1 0 960 $2; done ) 2>>"$OUT/study.log" &
  STUDIES+=($!)
done
# What is there is written down from time to time, in case the machine's time ends.
( while sleep 15; do cat "$PICTURES"/study-* > "$OUT/study.jsonl"; done ) &
KEEPER=$!
wait "${STUDIES[@]}"
kill $KEEPER
cat "$PICTURES"/study-* > "$OUT/study.jsonl"
