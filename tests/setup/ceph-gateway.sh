#!/bin/sh
# A real S3 server for the long run: Ceph's object gateway out of Debian's packages, all of it in memory, on loopback.
#   apt-get install -y --no-install-recommends radosgw ceph-mon ceph-osd ceph-common
#   tests/setup/ceph-gateway.sh start FOLDER     prints its address; the keys are those of tests/setup/s3-stub.ts
#   tests/setup/ceph-gateway.sh stop FOLDER
set -eu
what=$1
dir=$2
port=${S3_PORT:-9197}
mon_port=${CEPH_MON_PORT:-43297}
pids=$dir/pids

stop() {
  [ -f "$pids" ] || return 0
  # The gateway hangs on TERM, so it gets a moment and then the end.
  xargs -r kill <"$pids" 2>/dev/null || true
  sleep 1
  xargs -r kill -9 <"$pids" 2>/dev/null || true
  rm -rf "$dir"
}

if [ "$what" = stop ]; then
  stop
  exit 0
fi

rm -rf "$dir"
mkdir -p "$dir/mon" "$dir/osd" "$dir/rgw"
fsid=$(cat /proc/sys/kernel/random/uuid)
osd=$(cat /proc/sys/kernel/random/uuid)
export CEPH_CONF="$dir/ceph.conf"
# No authentication between its own parts, and no checks that need more than one of each; the short intervals make it answer
# within seconds.
cat >"$CEPH_CONF" <<C
[global]
fsid = $fsid
mon_host = v2:127.0.0.1:$mon_port
public_addr = 127.0.0.1
cluster_addr = 127.0.0.1
auth_cluster_required = none
auth_service_required = none
auth_client_required = none
ms_mon_client_mode = crc
run_dir = $dir
pid_file =
admin_socket = $dir/\$name.\$pid.asok
log_file = $dir/\$name.log
mon_cluster_log_file = /dev/null
osd_crush_chooseleaf_type = 0
osd_pool_default_size = 1
osd_pool_default_min_size = 1
osd_pool_default_pg_num = 1
osd_pool_default_pgp_num = 1
osd_pool_default_pg_autoscale_mode = off
mon_allow_pool_size_one = true
paxos_propose_interval = 0.02
paxos_min_wait = 0.01
mon_data_avail_crit = 1
[mon]
mon_data = $dir/mon
[osd]
osd_data = $dir/osd
osd_objectstore = memstore
memstore_device_bytes = 1073741824
[client]
rgw_data = $dir/rgw
keyring = $dir/none
rgw_frontends = beast endpoint=127.0.0.1:$port
rgw_rados_pool_pg_num_min = 1
C
monmaptool --create --fsid "$fsid" --addv a "[v2:127.0.0.1:$mon_port]" "$dir/monmap" >/dev/null
ceph-mon --mkfs -i a --monmap "$dir/monmap"
ceph-mon -f -i a >"$dir/mon.out" 2>&1 </dev/null &
echo $! >>"$pids"
timeout 60 ceph osd new "$osd" >/dev/null
ceph-osd --mkfs -i 0 --osd-uuid "$osd" >"$dir/osd.mkfs" 2>&1
ceph-osd -f -i 0 >"$dir/osd.out" 2>&1 </dev/null &
echo $! >>"$pids"
timeout 120 radosgw-admin user create --uid=tester --display-name=tester --access-key=tester \
  --secret-key=not-a-secret >"$dir/user.json" 2>"$dir/admin.err"
radosgw -f -n client.rgw >"$dir/rgw.out" 2>&1 </dev/null &
echo $! >>"$pids"
tries=0
until curl -so /dev/null "http://127.0.0.1:$port/"; do
  tries=$((tries + 1))
  [ "$tries" -lt 600 ] || { stop; exit 1; }
  sleep 0.2
done
echo "http://127.0.0.1:$port"
