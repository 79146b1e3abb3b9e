"""Places in a row, each as near as can be to where it would like to be, and none nearer to the next than a pitch."""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass
class _Cluster:
    """Neighbours that push each other: they stand a pitch apart about the mean of their wishes."""

    first: int
    wishes: float
    count: int

    @property
    def mean(self) -> float:
        return self.wishes / self.count


def spread(wanted: Sequence[float], pitch: float, low: float, high: float) -> list[float] | None:
    """Where each goes, in the order of `wanted`, which rises; None where low to high is too short for all.

    The sum of the squared moves is the least there is (isotonic regression by pooling neighbours).
    """
    if not wanted:
        return []
    if (len(wanted) - 1) * pitch > high - low + 1e-9:
        return None
    tops = [place - i * pitch for i, place in enumerate(wanted)]
    last = high - (len(wanted) - 1) * pitch
    levels = [min(max(level, low), last) for level in _pooled(tops)]
    return [level + i * pitch for i, level in enumerate(levels)]


def _pooled(values: list[float]) -> list[float]:
    clusters: list[_Cluster] = []
    for i, value in enumerate(values):
        clusters.append(_Cluster(i, value, 1))
        while len(clusters) > 1 and clusters[-2].mean > clusters[-1].mean:
            right = clusters.pop()
            clusters[-1] = _Cluster(
                clusters[-1].first, clusters[-1].wishes + right.wishes, clusters[-1].count + right.count
            )
    return [cluster.mean for cluster in clusters for _ in range(cluster.count)]
