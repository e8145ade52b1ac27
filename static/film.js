// Makes films of what the page paints: frame by frame, live, or as a GIF. Loaded when first asked
// for, as are the two packages that it uses.
//
// The page hands in `hear(kind, value)`, which is told of
//   formats    what this browser can encode, as in { mp4: 'avc', sound: 'aac', webm: 'vp9' }
//   progress   how many frames are done
//   level      how loud the microphone is, from 0 to 1
//   narrated   the seconds of a narration that is now kept
//   ready      a Blob that is done
//   cancelled  nothing
//   refused    nothing: no microphone was allowed or found
//   failed     a sentence of the browser's own
// A job paints through `paint(frame)` on `canvas`; frames are counted from 0.

// The containers, and the codecs that each is given, the best first. MP4 is for programs that show
// slides, which play H.264 and little else.
const VIDEO = { mp4: ['avc'], webm: ['vp9', 'av1', 'vp8'] };
const SOUND = { mp4: ['aac', 'opus'], webm: ['opus'] };
// How long the page may be kept busy before it is let breathe, in milliseconds; chosen.
const BUSY = 40;
// Milliseconds between two readings of the microphone's level; chosen.
const LEVEL_EVERY = 100;
const LIVE_FPS = 30;
const RECORDED = [
  'video/mp4;codecs=avc1.640028,mp4a.40.2',
  'video/webm;codecs=vp9,opus',
  'video/webm',
  'video/mp4',
];

export function kit(hear) {
  let stop = null;
  let narration = null;
  let live = null;

  const fail = (error) => hear('failed', String(error?.message ?? error));

  // Runs a job that can be cancelled; one at a time.
  async function run(job) {
    const controller = new AbortController();
    stop = controller;
    try {
      const blob = await job(controller.signal);
      hear('ready', blob);
    } catch (error) {
      if (controller.signal.aborted) hear('cancelled');
      else fail(error);
    }
    stop = null;
  }

  return {
    async formats(width, height) {
      await encodable(width, height).then((found) => hear('formats', found), fail);
    },
    render: (job) => run((signal) => render(job, narration, hear, signal)),
    animate: (job) => run((signal) => animate(job, hear, signal)),
    cancel: () => stop?.abort(),

    // A narration by itself, to be laid under the next film.
    async narrate() {
      const keep = (blob, seconds) => {
        narration = blob;
        hear('narrated', seconds);
      };
      live = await begin(hear, null, true, keep).catch(fail);
    },
    drop() {
      narration = null;
    },
    // What the page paints on the canvas while it goes on, with the microphone or without.
    async record(canvas, sound) {
      const keep = async (blob) => hear('ready', await mended(blob));
      live = await begin(hear, canvas, sound, keep).catch(fail);
    },
    hold: (held) => live?.hold(held),
    end() {
      live?.end();
      live = null;
    },
  };
}

async function encodable(width, height) {
  if (!('VideoEncoder' in globalThis)) return {};
  const bunny = await import('./film/mediabunny.js');
  const found = {};
  for (const [container, codecs] of Object.entries(VIDEO)) {
    found[container] = await bunny.getFirstEncodableVideoCodec(codecs, { width, height });
  }
  if ('AudioEncoder' in globalThis) {
    found.sound = await bunny.getFirstEncodableAudioCodec(SOUND.mp4);
  }
  return found;
}

async function render({ canvas, paint, frames, fps, container }, narration, hear, signal) {
  const bunny = await import('./film/mediabunny.js');
  const { width, height } = canvas;
  const format = container === 'mp4'
    ? new bunny.Mp4OutputFormat({ fastStart: 'in-memory' })
    : new bunny.WebMOutputFormat();
  const output = new bunny.Output({ format, target: new bunny.BufferTarget() });
  const codec = await bunny.getFirstEncodableVideoCodec(VIDEO[container], { width, height });
  if (!codec) throw new Error(`no video codec for ${container}`);
  const quality = new bunny.Quality('high');
  const video = new bunny.CanvasSource(canvas, { codec, quality });
  output.addVideoTrack(video, { frameRate: fps });

  const spoken = narration && (await decoded(narration, frames / fps));
  let sound = null;
  if (spoken) {
    const audio = await bunny.getFirstEncodableAudioCodec(SOUND[container], {
      numberOfChannels: spoken.numberOfChannels,
      sampleRate: spoken.sampleRate,
    });
    if (!audio) throw new Error(`no sound codec for ${container}`);
    sound = new bunny.AudioBufferSource({ codec: audio, quality });
    output.addAudioTrack(sound);
  }
  try {
    await output.start();
    // Sound first: it is short beside the pictures, and the file is put in order at the end.
    if (sound) {
      await sound.add(spoken);
      sound.close();
    }
    let free = performance.now();
    for (let frame = 0; frame < frames; frame += 1) {
      paint(frame);
      await video.add(frame / fps, 1 / fps);
      if (performance.now() - free > BUSY) {
        hear('progress', frame + 1);
        await breath();
        free = performance.now();
      }
      signal.throwIfAborted();
    }
    video.close();
    await output.finalize();
  } catch (error) {
    await output.cancel();
    throw error;
  }
  return new Blob([output.target.buffer], { type: `video/${container}` });
}

// The narration as samples, no longer than the film.
async function decoded(blob, seconds) {
  const context = new OfflineAudioContext(1, 48_000, 48_000);
  const whole = await context.decodeAudioData(await blob.arrayBuffer());
  const length = Math.min(whole.length, Math.round(seconds * whole.sampleRate));
  const cut = new AudioBuffer({
    length: Math.max(length, 1),
    numberOfChannels: whole.numberOfChannels,
    sampleRate: whole.sampleRate,
  });
  for (let channel = 0; channel < whole.numberOfChannels; channel += 1) {
    cut.copyToChannel(whole.getChannelData(channel).subarray(0, cut.length), channel);
  }
  return cut;
}

// A GIF that goes round for ever. All frames share the colours of the first and the middle one.
async function animate({ canvas, paint, frames, fps }, hear, signal) {
  const { GIFEncoder, applyPalette, quantize } = await import('./film/gifenc.js');
  const { width, height } = canvas;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  const pixels = () => context.getImageData(0, 0, width, height).data;
  const seen = new Uint8ClampedArray(2 * 4 * width * height);
  paint(0);
  seen.set(pixels());
  paint(Math.floor(frames / 2));
  seen.set(pixels(), 4 * width * height);
  const palette = quantize(seen, 256);
  const gif = GIFEncoder();
  for (let frame = 0; frame < frames; frame += 1) {
    paint(frame);
    const first = frame === 0 ? { palette } : {};
    gif.writeFrame(applyPalette(pixels(), palette), width, height, { ...first, delay: 1000 / fps });
    hear('progress', frame + 1);
    await breath();
    signal.throwIfAborted();
  }
  gif.finish();
  return new Blob([gif.bytesView()], { type: 'image/gif' });
}

// Lets the page do what waits. A timer would be slowed down to one a second out of sight.
function breath() {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

// Starts recording; gives what holds it and ends it. `keep` gets the recording and its seconds.
async function begin(hear, canvas, sound, keep) {
  let microphone = null;
  if (sound) {
    try {
      microphone = await navigator.mediaDevices.getUserMedia({ audio: true });
    } catch {
      hear('refused');
      return null;
    }
  }
  const tracks = microphone?.getAudioTracks() ?? [];
  if (canvas) tracks.push(...canvas.captureStream(LIVE_FPS).getVideoTracks());
  const type = canvas && RECORDED.find((it) => MediaRecorder.isTypeSupported(it));
  const options = canvas ? { mimeType: type, videoBitsPerSecond: 8_000_000 } : {};
  const recorder = new MediaRecorder(new MediaStream(tracks), options);
  const pieces = [];
  let spent = 0;
  let since = performance.now();
  const metered = microphone && meter(microphone, hear);
  recorder.ondataavailable = ({ data }) => pieces.push(data);
  recorder.onerror = ({ error }) => hear('failed', String(error?.message ?? error));
  recorder.onstop = () => {
    for (const track of tracks) track.stop();
    metered?.();
    keep(new Blob(pieces, { type: recorder.mimeType }), spent / 1000);
  };
  recorder.start(1000);
  hear('recording');
  return {
    hold(held) {
      if (held === (recorder.state === 'paused')) return;
      if (held) {
        spent += performance.now() - since;
        recorder.pause();
      } else {
        since = performance.now();
        recorder.resume();
      }
    },
    end() {
      if (recorder.state === 'inactive') return;
      if (recorder.state === 'recording') spent += performance.now() - since;
      recorder.stop();
    },
  };
}

// Tells how loud it is until what it gives is called.
function meter(stream, hear) {
  const context = new AudioContext();
  const analyser = context.createAnalyser();
  context.createMediaStreamSource(stream).connect(analyser);
  const wave = new Float32Array(analyser.fftSize);
  const timer = setInterval(() => {
    analyser.getFloatTimeDomainData(wave);
    hear('level', Math.min(1, Math.max(...wave.map(Math.abs))));
  }, LEVEL_EVERY);
  return () => {
    clearInterval(timer);
    context.close();
    hear('level', 0);
  };
}

// A live recording does not know how long it is, and cannot be sought in: its packets are put into
// a file that does, as they are. Where that fails the recording itself is better than none.
async function mended(blob) {
  try {
    const bunny = await import('./film/mediabunny.js');
    const mp4 = blob.type.startsWith('video/mp4');
    const output = new bunny.Output({
      format: mp4 ? new bunny.Mp4OutputFormat({ fastStart: 'in-memory' }) : new bunny.WebMOutputFormat(),
      target: new bunny.BufferTarget(),
    });
    const input = new bunny.Input({ source: new bunny.BlobSource(blob), formats: bunny.ALL_FORMATS });
    const conversion = await bunny.Conversion.init({ input, output });
    await conversion.execute();
    return new Blob([output.target.buffer], { type: mp4 ? 'video/mp4' : 'video/webm' });
  } catch {
    return blob;
  }
}
