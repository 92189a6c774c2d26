for i in 1; do
node "$@" src/entry.js export --data /tmp/hce/large.sqlite --guild bench --challenge 1 --out /tmp/hce/o.csv & p=$!; m=0; while kill -0 $p 2>/dev/null; do v=$(grep VmHWM /proc/$p/status 2>/dev/null | tr -dc 0-9); [ -n "$v" ] && m=$v; sleep 0.2; done; echo "$@ $m"
done
