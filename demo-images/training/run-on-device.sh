#!/bin/bash
# Renders on most cores while training goes on, then studies what came out. By hand only: see README.md.
# run-on-device.sh NODE FOLDER_OF_BUNDLES PICTURES OUT SECONDS WAIT COMMIT
set -u
NODE=$1; BUNDLES=$2; PICTURES=$3; OUT=$4; TRAIN=$5; WAIT=$6; COMMIT=$7
HERE=$(cd "$(dirname "$0")" && pwd)
GPUS=$(nvidia-smi -L | wc -l)
CORES=$(( $(nproc) - 2 * GPUS ))
mkdir -p "$PICTURES" "$OUT"
RENDERERS=()
for i in $(seq 0 $((CORES - 1))); do
  ( exec nice -n 5 "$NODE" "$BUNDLES/make-training.mjs" "$PICTURES" $i $CORES 9000 train 1 ) 2>>"$OUT/render.log" &
  RENDERERS+=($!)
done
export PYTHONUNBUFFERED=1
( cd "$HERE" && torchrun --nproc-per-node "$GPUS" train.py "$PICTURES" "$OUT" "$TRAIN" --wait "$WAIT" --commit "$COMMIT" >"$OUT/train.log" 2>&1 ) \
  || ( cd "$HERE" && python3 train.py "$PICTURES" "$OUT" $((TRAIN * 7 / 10)) --wait "$WAIT" --commit "$COMMIT" >>"$OUT/train.log" 2>&1 )
kill "${RENDERERS[@]}" 2>/dev/null
ALL=$(nproc)
export READER_WEIGHTS="$OUT/reader.onnx"
STUDIES=()
for i in $(seq 0 $((ALL - 1))); do
  ( cd "$BUNDLES" && for k in "calibration 0 128" "kept-street 0 128" "kept-plain 0 64"; do
      set -- $k; timeout 120 "$NODE" make-study.mjs "$PICTURES/study-$1-$i" $i $ALL $1 $2 $3; done ) 2>>"$OUT/study.log" &
  STUDIES+=($!)
done
wait "${STUDIES[@]}"
cat "$PICTURES"/study-* > "$OUT/study.jsonl"
