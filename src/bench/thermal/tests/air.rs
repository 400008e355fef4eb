//! Blowers against filters, coils and ducts.

use super::call::make;
use crate::bench::make::{Blower, Make};
use crate::bench::thermal::air::House;
use crate::bench::thermal::condition::Air;
use crate::bench::thermal::register::worked;
use crate::trade::static_at_airflow;

fn house(make: &Make, wrong: &Air) -> House {
    House::new(make, make.input * make.efficiency, wrong)
}

/// Duct and fan laws (the register's `static_at_airflow`): in the same ducts the static goes with the square of the flow.
#[test]
fn static_goes_with_the_square_of_the_flow() {
    let house = house(&make(), &Air::default());
    let (whole, less) = (house.moves(1.0), house.moves(0.7));
    let expected = worked(
        &static_at_airflow::FORMULA,
        [whole.supply_static, whole.airflow, less.airflow],
        0.0,
    );
    assert!(
        (less.supply_static - expected).abs() < 1e-9,
        "{expected} {less:?}"
    );
    assert!((less.airflow / whole.airflow - 0.7).abs() < 1e-9);
}

/// Facts of the trade (common practice): the same loaded filter takes most air from a tapped motor, less from one of constant
/// torque, and none from one of constant airflow until that has reached its most pressure.
#[test]
fn blowers_give_way_by_their_kind() {
    let kinds = [Blower::Tapped, Blower::ConstantTorque, Blower::ConstantAirflow];
    let left = kinds.map(|blower| {
        let make = Make { blower, ..make() };
        let loaded = Air {
            filter_loaded: 0.6,
            ..Air::default()
        };
        house(&make, &loaded).moves(1.0).airflow / house(&make, &Air::default()).moves(1.0).airflow
    });
    assert!(left[0] < left[1] && left[1] < left[2], "{left:?}");
    assert!((left[2] - 1.0).abs() < 1e-9, "{left:?}");
}

/// Where the static is lost is told drop by drop: each restriction raises its own share and lowers the others'.
#[test]
fn each_restriction_shows_in_its_own_drop() {
    let make = make();
    let right = house(&make, &Air::default()).moves(1.0);
    let filter = house(
        &make,
        &Air {
            filter_loaded: 0.8,
            ..Air::default()
        },
    )
    .moves(1.0);
    let coil = house(
        &make,
        &Air {
            coil_loaded: 0.8,
            ..Air::default()
        },
    )
    .moves(1.0);
    let tight = house(
        &make,
        &Air {
            return_tight: 0.8,
            ..Air::default()
        },
    )
    .moves(1.0);
    let supply = house(
        &make,
        &Air {
            supply_tight: 0.8,
            ..Air::default()
        },
    )
    .moves(1.0);
    let of = |moved: &crate::bench::thermal::air::Moved| {
        [
            moved.return_static - moved.return_duct_static,
            moved.supply_static - moved.supply_duct_static,
            moved.return_duct_static,
            moved.supply_duct_static,
        ]
    };
    for (own, moved) in [filter, coil, tight, supply].iter().enumerate() {
        for (at, (now, before)) in of(moved).into_iter().zip(of(&right)).enumerate() {
            assert_eq!(now > before, at == own, "{own} {at} {moved:?}");
        }
    }
}

/// A wheel that slips or is dirty moves less and makes less static, not more: the ducts are not the reason.
#[test]
fn a_weak_wheel_lowers_the_static() {
    let make = make();
    let right = house(&make, &Air::default()).moves(1.0);
    for wrong in [
        Air {
            wheel_dirty: 0.5,
            ..Air::default()
        },
        Air {
            wheel_loose: 0.4,
            ..Air::default()
        },
        Air {
            wheel_backward: true,
            ..Air::default()
        },
        Air {
            speed_low: 0.4,
            ..Air::default()
        },
    ] {
        let weak = house(&make, &wrong).moves(1.0);
        assert!(weak.airflow < 0.8 * right.airflow, "{wrong:?} {weak:?}");
        assert!(weak.supply_static < right.supply_static, "{wrong:?}");
    }
}
