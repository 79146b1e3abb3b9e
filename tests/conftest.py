import os

from hypothesis import HealthCheck, settings

settings.register_profile(
    "steady",
    deadline=None,  # speed is measured in tests/benchmarks, not by a busy machine
    max_examples=60,
    suppress_health_check=[HealthCheck.too_slow],
    derandomize="CI" in os.environ,  # a gate gives the same answer twice; a developer sees new cases
)
settings.register_profile("thorough", parent=settings.get_profile("steady"), max_examples=2000)
settings.load_profile("steady")
