"use strict";
// A scanner that types like a keyboard, and the camera. Pictures go to the program on this machine and nowhere else.
(function () {
  // A scanner types a code faster than a hand and ends it with Enter. Where the cursor is in a field, it types into that.
  const apart = 60, shortest = 3, bottle = /^M\d+$/i;
  const listeners = [];
  let typed = "", last = 0;
  const inField = (target) => target instanceof HTMLElement && (target.matches("input:not([type=checkbox]):not([type=radio]), textarea, select") || target.isContentEditable);
  window.addEventListener("keydown", (event) => {
    if (inField(event.target) || event.altKey || event.metaKey || listeners.length === 0) { typed = ""; return; }
    const now = performance.now(), going = typed.length > 0 && now - last < apart;
    if (event.key === "Enter") {
      const code = going && (typed.length >= shortest || bottle.test(typed)) ? typed : "";
      typed = "";
      if (!code) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      listeners[listeners.length - 1].invokeMethodAsync("Scanned", code);
      return;
    }
    // Some scanners send the separator between two elements as Ctrl and a bracket.
    const character = event.ctrlKey ? (event.key === "]" ? String.fromCharCode(29) : "") : event.key.length === 1 ? event.key : "";
    if (!character) { if (event.key !== "Shift" && event.key !== "Control") typed = ""; return; }
    typed = going ? typed + character : character;
    last = now;
    // What belongs to a code opens nothing else on the page.
    if (going) event.stopImmediatePropagation();
    if (going && character === " ") event.preventDefault();
  }, true);

  // One camera at a time. A frame is made grey, sent, and answered before the next is taken.
  let stream = null, turn = 0;
  const stop = () => {
    turn++;
    if (stream) for (const track of stream.getTracks()) track.stop();
    stream = null;
  };
  const frame = (video, canvas) => {
    const scale = Math.min(1, 1280 / Math.max(video.videoWidth, video.videoHeight));
    const w = Math.floor(video.videoWidth * scale), h = Math.floor(video.videoHeight * scale);
    if (!w || !h) return null;
    canvas.width = w; canvas.height = h;
    const context = canvas.getContext("2d", { willReadFrequently: true });
    context.drawImage(video, 0, 0, w, h);
    const rgba = context.getImageData(0, 0, w, h).data, grey = new Uint8Array(w * h);
    // Rec. 601 luma, in whole numbers.
    for (let i = 0, p = 0; i < grey.length; i++, p += 4) grey[i] = (rgba[p] * 77 + rgba[p + 1] * 150 + rgba[p + 2] * 29) >> 8;
    return { grey, w, h };
  };
  const look = async (video, ref, mine) => {
    const canvas = document.createElement("canvas");
    while (mine === turn) {
      const picture = frame(video, canvas);
      if (picture) {
        const answer = await fetch("/read-code", { method: "POST", headers: { "Content-Type": "application/octet-stream", "X-Picture": `${picture.w}x${picture.h}` }, body: picture.grey });
        if (mine !== turn) return;
        if (answer.status === 200) {
          const code = await answer.text();
          if (mine === turn) { stop(); await ref.invokeMethodAsync("Scanned", code); }
          return;
        }
      }
      await new Promise((done) => setTimeout(done, 150));
    }
  };
  window.labelforgeScan = {
    // How many hear a scanner: a page that has just been drawn has asked for it and may not be heard yet.
    get hears() { return listeners.length; },
    listen: (ref) => { listeners.push(ref); },
    leave: (ref) => { const at = listeners.findIndex((l) => l._id === ref._id); if (at >= 0) listeners.splice(at, 1); },
    // Says why where there is no picture: denied, none, busy.
    open: async (id, ref) => {
      stop();
      const mine = turn;
      try {
        const opened = await navigator.mediaDevices.getUserMedia({ audio: false, video: { facingMode: "environment", width: { ideal: 1280 }, height: { ideal: 720 } } });
        const video = document.getElementById(id);
        if (mine !== turn || !video) { for (const track of opened.getTracks()) track.stop(); return "closed"; }
        stream = opened;
        video.srcObject = opened;
        await video.play();
        look(video, ref, mine).catch(() => { stop(); ref.invokeMethodAsync("Lost"); });
        return "open";
      } catch (error) {
        stop();
        return error.name === "NotAllowedError" ? "denied" : error.name === "NotFoundError" || !navigator.mediaDevices ? "none" : "busy";
      }
    },
    close: () => stop(),
  };
})();
