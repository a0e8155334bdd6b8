"""Photograph + region -> what the network sees. The reference for ml/preprocess.ts.

1. Alpha is laid over white; grey = 0.299 R + 0.587 G + 0.114 B on the sRGB values, 0..1.
2. The region is a box {x, y, width, height} in pixels of the photograph as stored (upright after
   its EXIF orientation), and a turn in degrees. The photograph is turned by `turn` clockwise, as
   seen on the screen, about the centre of the box.
3. The smallest square that contains the box, with the same centre, is cut from the turned
   photograph: side s = max(width, height). In pixel-corner coordinates (pixel i covers i..i+1):
   the point (u, v) of the square, 0 <= u, v <= s, is the photograph's point
       x = cx + cos(t) (u - s/2) + sin(t) (v - s/2)
       y = cy - sin(t) (u - s/2) + cos(t) (v - s/2)
   where (cx, cy) is the centre of the box and t the turn in radians (clockwise on the screen,
   y down). With turn 0 that is a plain crop, which is cut at whole pixels: left = floor(cx - s/2
   + 0.5), s = max(1, round(s)). With a turn, samples are bilinear at s x s points.
4. Where the square runs past the photograph's edge, the photograph is mirrored (edge pixel
   repeated: numpy's 'symmetric', libvips' 'mirror').
5. The square is resized to 160 x 160 with an antialiased triangle filter (Pillow's BILINEAR,
   sharp's kernel 'linear').
6. Standardised: (x - mean) / (standard deviation + 0.02), population standard deviation.
"""

import math

import numpy as np
from PIL import Image

from network import SIDE

SOFTENING = 0.02
CONSTANTS = {
    "side": SIDE,
    "grey": [0.299, 0.587, 0.114],
    "alphaOver": 255,
    "square": "smallest square that contains the box, same centre",
    "beyondEdge": "mirror",
    "filter": "triangle, antialiased",
    "turn": "degrees the photograph is turned clockwise about the centre of the box before it is cut",
    "softening": SOFTENING,
}


def grey(image: Image.Image) -> np.ndarray:
    """float64 [height, width], 0..1."""
    rgba = np.asarray(image.convert("RGBA"), dtype=np.float64) / 255
    luma = rgba[..., :3] @ np.array(CONSTANTS["grey"])
    alpha = rgba[..., 3]
    return luma * alpha + 1.0 * (1 - alpha)


def mirrored(index: np.ndarray, size: int) -> np.ndarray:
    """Indices past an edge, folded back with the edge pixel repeated."""
    index = np.mod(index, 2 * size)
    return np.where(index < size, index, 2 * size - 1 - index)


def cut(picture: np.ndarray, box: dict, turn: float) -> np.ndarray:
    """The square round the box of the turned picture, at the photograph's own resolution."""
    height, width = picture.shape
    cx, cy = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    side = max(1, math.floor(max(box["width"], box["height"]) + 0.5))
    if turn % 360 == 0:
        left, top = math.floor(cx - side / 2 + 0.5), math.floor(cy - side / 2 + 0.5)
        rows = mirrored(np.arange(top, top + side), height)
        columns = mirrored(np.arange(left, left + side), width)
        return picture[np.ix_(rows, columns)]
    t = math.radians(turn)
    steps = np.arange(side) + 0.5 - side / 2
    u, v = np.meshgrid(steps, steps)
    x = cx + math.cos(t) * u + math.sin(t) * v - 0.5
    y = cy - math.sin(t) * u + math.cos(t) * v - 0.5
    x0, y0 = np.floor(x).astype(int), np.floor(y).astype(int)
    fx, fy = x - x0, y - y0
    sample = lambda dy, dx: picture[mirrored(y0 + dy, height), mirrored(x0 + dx, width)]
    upper = sample(0, 0) * (1 - fx) + sample(0, 1) * fx
    lower = sample(1, 0) * (1 - fx) + sample(1, 1) * fx
    return upper * (1 - fy) + lower * fy


def standardise(picture: np.ndarray) -> np.ndarray:
    return (picture - picture.mean()) / (picture.std() + SOFTENING)


def preprocess(image: Image.Image, box: dict | None = None, turn: float = 0.0) -> np.ndarray:
    """float32 [160, 160], standardised. Without a box the whole photograph is the region."""
    if box is None:
        box = {"x": 0, "y": 0, "width": image.width, "height": image.height}
    square = cut(grey(image), box, turn)
    small = Image.fromarray(square.astype(np.float32), mode="F").resize(
        (SIDE, SIDE), Image.Resampling.BILINEAR
    )
    return standardise(np.asarray(small, dtype=np.float64)).astype(np.float32)
