#!/bin/sh
# Makes a Debian computer show Pailside's Barn board, full screen, each time it is switched on.
#
#   sudo sh barn-board.sh http://localhost:4173/barn/            the board's address
#   sudo sh barn-board.sh http://localhost:4173/barn/ left       a screen that hangs on its side: left, right or inverted
#   sudo sh barn-board.sh --remove                               takes all of it away again
#
# It installs Chromium and the plain X server from Debian, makes a user that can do nothing else, writes a policy that
# opens the board and no other address, and a service that starts it. Nothing else on the computer is changed.
set -eu

name=pailside-board
home=/var/lib/$name
session=/usr/local/lib/$name/session
unit=/etc/systemd/system/$name.service
policy=/etc/chromium/policies/managed/$name.json

if [ "$(id -u)" != 0 ]; then
  echo "Run this with sudo, for instance: sudo sh barn-board.sh http://localhost:4173/barn/" >&2
  exit 1
fi

if [ "${1:-}" = --remove ]; then
  systemctl disable --now $name.service 2>/dev/null || true
  rm -f "$unit" "$policy" "$session"
  rmdir "$(dirname "$session")" 2>/dev/null || true
  systemctl daemon-reload 2>/dev/null || true
  echo "The board does not start by itself any more. Its counts and guesses are still in $home."
  exit 0
fi

address=${1:-}
turn=${2:-normal}
case $address in
  http://?*/ | https://?*/) ;;
  *)
    echo "Name the board's address with its last slash, for instance http://localhost:4173/barn/ (found: \"$address\")." >&2
    exit 1
    ;;
esac
case $address in
  *[!A-Za-z0-9:/._~%-]*)
    echo "The address holds a sign that no address of a board has: \"$address\"." >&2
    exit 1
    ;;
esac
case $turn in
  normal | left | right | inverted) ;;
  *)
    echo "A screen hangs normal, left, right or inverted (found: \"$turn\")." >&2
    exit 1
    ;;
esac
# Everything up to the first slash after the host, for the policy and for trust.
origin=$(printf '%s\n' "$address" | sed 's#^\(https*://[^/]*\)/.*#\1#')

export DEBIAN_FRONTEND=noninteractive
apt-get update
apt-get install -y --no-install-recommends \
  chromium xinit xserver-xorg xserver-xorg-legacy x11-xserver-utils x11-utils xinput dbus alsa-utils fonts-dejavu-core

if ! id $name >/dev/null 2>&1; then
  adduser --system --group --home $home --shell /usr/sbin/nologin $name
fi
for group in video audio input render tty; do
  adduser $name $group >/dev/null 2>&1 || true
done
install -d -o $name -g $name -m 700 $home

# Only the board's user starts this X server, and no one sits at a desk here.
printf 'allowed_users=anybody\nneeds_root_rights=yes\n' >/etc/X11/Xwrapper.config

# Nothing but the board opens, whatever is typed on a keyboard; no camera, no microphone, no downloads.
install -d /etc/chromium/policies/managed
cat >"$policy" <<POLICY
{
  "URLBlocklist": ["*"],
  "URLAllowlist": ["$origin"],
  "AudioCaptureAllowed": false,
  "VideoCaptureAllowed": false,
  "DefaultGeolocationSetting": 2,
  "DefaultNotificationsSetting": 2,
  "DownloadRestrictions": 3,
  "DeveloperToolsAvailability": 2,
  "IncognitoModeAvailability": 1,
  "BrowserSignin": 0,
  "SyncDisabled": true,
  "PasswordManagerEnabled": false,
  "AutofillAddressEnabled": false,
  "AutofillCreditCardEnabled": false,
  "TranslateEnabled": false,
  "SearchSuggestEnabled": false,
  "MetricsReportingEnabled": false,
  "BackgroundModeEnabled": false,
  "EditBookmarksEnabled": false,
  "ShowHomeButton": false
}
POLICY

install -d "$(dirname "$session")"
cat >"$session" <<SESSION
#!/bin/sh
# What runs on the barn's screen. Written by barn-board.sh.
xset s off -dpms s noblank || true
if [ "$turn" != normal ]; then
  screen=\$(xrandr | sed -n 's/^\([^ ]*\) connected.*/\1/p' | head -n 1)
  xrandr --output "\$screen" --rotate $turn || true
  for touch in \$(xinput list --id-only 2>/dev/null); do
    xinput map-to-output "\$touch" "\$screen" 2>/dev/null || true
  done
fi
size=\$(xrandr | sed -n 's/.*current \([0-9]*\) x \([0-9]*\),.*/\1,\2/p' | head -n 1)
# After a power cut nobody is there to answer a question about it.
for file in "$home/browser/Default/Preferences"; do
  [ -f "\$file" ] && sed -i 's/"exited_cleanly":false/"exited_cleanly":true/; s/"exit_type":"[^"]*"/"exit_type":"Normal"/' "\$file"
done
rm -f "$home/browser/SingletonLock" "$home/browser/SingletonSocket" "$home/browser/SingletonCookie"
# Each of Chromium's processes quits when the first one has not spoken to it within 15 seconds. While a computer is
# still busy starting, that time runs out; the one that fetches pages is then replaced, but the board it had been asked
# for is forgotten and the screen stays blank. Five minutes is long enough for a slow computer.
chromium --kiosk --user-data-dir="$home/browser" --window-position=0,0 --window-size="\${size:-1080,1920}" \\
  --ipc-connection-timeout=300 --no-first-run --noerrdialogs --disable-session-crashed-bubble --hide-crash-restore-bubble \\
  --disable-pinch --overscroll-history-navigation=0 --disable-features=Translate --force-prefers-reduced-motion \\
  --password-store=basic --disable-component-update --disable-background-networking --disable-sync \\
  --unsafely-treat-insecure-origin-as-secure="$origin" "$address" &
browser=\$!
# A browser that opened no page of the board (its title has a point in the middle) for five minutes is started anew:
# should one stand blank all the same, no one is there to press a key. Sooner would cut off a slow start half-way.
misses=0
while sleep 30 && kill -0 \$browser 2>/dev/null; do
  if xwininfo -root -tree | grep -q '" *[^"]* · [^"]*"'; then misses=0; else misses=\$((misses + 1)); fi
  [ \$misses -ge 10 ] && kill \$browser
done
SESSION
chmod 755 "$session"

cat >"$unit" <<UNIT
[Unit]
Description=Pailside's Barn board, full screen
After=systemd-user-sessions.service network.target sound.target
Conflicts=getty@tty7.service

[Service]
User=$name
PAMName=login
TTYPath=/dev/tty7
StandardInput=tty
StandardOutput=journal
WorkingDirectory=$home
Environment=HOME=$home
ExecStart=/usr/bin/xinit $session -- :0 vt7 -nolisten tcp -nocursor
Restart=always
RestartSec=3

[Install]
WantedBy=multi-user.target
UNIT

# A switch that is pressed at night must not leave the board without its browser.
systemctl daemon-reload 2>/dev/null || true
systemctl enable $name.service
echo "Done. The board opens $address when this computer starts. To see it now: sudo systemctl start $name"
