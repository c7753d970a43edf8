"""What a timber weighs, against what has been printed elsewhere."""

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as st

from woodmath import timber
from woodmath.errors import UnknownName


def test_every_step_of_the_density_follows():
    assert_every_step_follows(timber.density_derivation())


@pytest.mark.parametrize(
    ("printed", "source"),
    [
        (560, "chapasarias.es, black cherry, 560 kg/m3 at 12 percent (READ)"),
        (561, "tiogahardwoods.com, species page of black cherry (READ)"),
    ],
)
def test_black_cherry_weighs_what_dealers_print(printed, source):
    assert timber.density("cherry, black") == pytest.approx(printed, abs=1.5), source


@given(st.sampled_from(timber.SPECIES), st.floats(0, 30))
def test_moisture_only_adds_weight(species, moisture):
    dry = timber.density(species.name, 0)
    assert dry == pytest.approx(1000 * species.specific_gravity.value)
    assert timber.density(species.name, moisture) >= dry


def test_every_value_says_where_it_comes_from_and_whether_we_saw_it():
    for species in timber.SPECIES:
        assert 0.3 < species.specific_gravity.value < 0.8
        for printed in filter(None, species.values.values()):
            assert printed.source
            assert printed.seen in ("read", "from memory")


def test_a_timber_that_is_not_in_the_table_is_refused_with_the_nearest_one():
    with pytest.raises(UnknownName, match="Did you mean maple, sugar"):
        timber.species("sugar maple, hard")
