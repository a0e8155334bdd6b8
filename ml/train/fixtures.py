"""Writes tests/fixtures/preprocess: small photographs, and what the network must see of them.

    python3 fixtures.py [--checkpoint FILE] [--out DIR]

`<name>.png` is the photograph, `<name>.bin` the 160 x 160 standardised picture as little-endian
float32 rows, and fixtures.json holds the regions, the turns and (with a checkpoint) the 256
numbers that the network answers with. The photographs are drawn here, from a fixed seed.
"""

import argparse
import json
import os

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

from preprocess import preprocess

SEED = 20260101


def ground(rng: np.random.Generator, width: int, height: int, tone: tuple) -> Image.Image:
    """A slightly uneven surface: a slow gradient and soft grain."""
    y, x = np.mgrid[0:height, 0:width]
    light = 1 + 0.25 * (x / width - 0.5) - 0.2 * (y / height - 0.5)
    grain = np.asarray(
        Image.fromarray(rng.normal(128, 40, (height // 3 + 1, width // 3 + 1)).clip(0, 255).astype(np.uint8))
        .resize((width, height), Image.Resampling.BICUBIC), dtype=float) / 128 - 1
    picture = np.array(tone)[None, None] * (light + 0.08 * grain)[..., None]
    return Image.fromarray(picture.clip(0, 255).astype(np.uint8), "RGB")


def mark(image: Image.Image, cx: float, cy: float, r: float, ink: tuple) -> None:
    """A ring with a cross-barred letter and three dots: nothing symmetrical, so a turn shows."""
    draw = ImageDraw.Draw(image)
    w = max(2, round(r / 9))
    draw.ellipse([cx - r, cy - r, cx + r, cy + r], outline=ink, width=w)
    draw.line([cx - r * 0.4, cy + r * 0.6, cx - r * 0.4, cy - r * 0.6, cx + r * 0.3, cy - r * 0.6], fill=ink, width=w)
    draw.line([cx - r * 0.4, cy, cx + r * 0.15, cy], fill=ink, width=w)
    for k, at in enumerate((0.1, 0.35, 0.6)):
        s = r * (0.06 + 0.03 * k)
        draw.ellipse([cx + r * 0.45 - s, cy + r * at - s, cx + r * 0.45 + s, cy + r * at + s], fill=ink)


def photographs():
    """(name, what it tries, image, box or None, turn)"""
    rng = np.random.default_rng(SEED)
    grey_one = ground(rng, 200, 200, (170, 170, 170)).convert("L").convert("RGB")
    mark(grey_one, 100, 100, 80, (60, 60, 60))
    yield "grey", "one channel, square, whole photograph", grey_one.convert("L"), None, 0

    colour = ground(rng, 240, 240, (196, 150, 96))
    mark(colour, 120, 118, 90, (40, 70, 120))
    yield "colour", "colour to grey, box inside", colour.filter(ImageFilter.GaussianBlur(0.6)), \
        {"x": 24, "y": 22, "width": 192, "height": 192}, 0

    wide = ground(rng, 260, 140, (120, 130, 120))
    mark(wide, 130, 70, 60, (220, 220, 200))
    yield "wide", "whole photograph wider than high: mirrored above and below", wide, None, 0

    clear = Image.new("RGBA", (180, 180), (0, 0, 0, 0))
    mark(clear, 90, 90, 70, (150, 30, 30, 255))
    y, x = np.mgrid[0:180, 0:180]
    veil = np.asarray(clear).copy()
    veil[..., 3] = np.where(veil[..., 3] > 0, 255 - x * 0.8, 0).astype(np.uint8)
    yield "alpha", "half-transparent ink over nothing, shown over white", Image.fromarray(veil, "RGBA"), None, 0

    edge = ground(rng, 220, 180, (90, 84, 80))
    mark(edge, 168, 44, 40, (200, 190, 170))
    yield "edge", "tall box at the upper right, past the edge by the square", edge, \
        {"x": 140, "y": 0, "width": 70, "height": 96}, 0

    turned = ground(rng, 260, 200, (205, 200, 190))
    mark(turned, 120, 96, 64, (70, 60, 50))
    yield "turned", "turned 33 degrees clockwise, box past the upper edge once squared", turned, \
        {"x": 40, "y": 22, "width": 168, "height": 150}, 33


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--checkpoint")
    here = os.path.dirname(os.path.abspath(__file__))
    parser.add_argument("--out", default=os.path.join(here, "..", "..", "tests", "fixtures", "preprocess"))
    options = parser.parse_args()
    os.makedirs(options.out, exist_ok=True)

    rows, pictures = [], []
    for name, what, image, box, turn in photographs():
        image.save(os.path.join(options.out, f"{name}.png"), optimize=True)
        picture = preprocess(Image.open(os.path.join(options.out, f"{name}.png")), box, turn)
        picture.astype("<f4").tofile(os.path.join(options.out, f"{name}.bin"))
        pictures.append(picture)
        rows.append({"name": name, "what": what, "photograph": f"{name}.png", "picture": f"{name}.bin",
                     "region": box, "turn": turn})
    if options.checkpoint:
        import torch
        from checkpoint import load_networks
        with torch.no_grad():
            z, _ = load_networks(options.checkpoint)[0](torch.from_numpy(np.stack(pictures)[:, None]))
        # The first network's vectors were written by the edition that trained it, and stand.
        with open(os.path.join(options.out, "fixtures.json")) as file:
            first = {row["name"]: row["vector"][:256] for row in json.load(file)["fixtures"]}
        for row, vector in zip(rows, z.numpy()):
            row["vector"] = first[row["name"]] + [round(float(v), 6) for v in vector]
    facts = {
        "from": "ml/train/fixtures.py",
        "format": "float32 little-endian, 160 rows of 160; region null means the whole photograph",
        "fixtures": rows,
    }
    with open(os.path.join(options.out, "fixtures.json"), "w") as file:
        json.dump(facts, file)
        file.write("\n")


if __name__ == "__main__":
    main()
