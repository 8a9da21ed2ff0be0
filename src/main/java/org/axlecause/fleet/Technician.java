package org.axlecause.fleet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Entry;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.Place;
import org.axlecause.facts.Stage;
import org.jspecify.annotations.Nullable;

/** Makes the checks that are asked for on an invented vehicle and tells what its parts show; seldom he is wrong. */
public final class Technician {

    private static final Set<CheckCode> NEED_A_TRACE = Set.of(CheckCode.EFFORT_SWEEP, CheckCode.HOLD_PEDAL_STEADY);

    private final VehicleState state;
    private final TestLane lane;
    private final VehicleTable table;
    private final double wrong;
    private final RandomGenerator random;
    private final Set<String> asked = new LinkedHashSet<>();
    private int wrongAnswers;

    Technician(VehicleState state, TestLane lane, VehicleTable table, double wrong, RandomGenerator random) {
        this.state = state;
        this.lane = lane;
        this.table = table;
        this.wrong = wrong;
        this.random = random;
    }

    /** How many answers were wrong so far. */
    public int wrongAnswers() {
        return wrongAnswers;
    }

    /** What comes out of a check: findings, or a run over the rollers. */
    public List<Entry> answer(CheckCode check, Place place, List<Offer> offers) {
        boolean again = !asked.add(check + " " + place);
        for (Offer offer : offers) {
            if (offer.rollerTest() != null) {
                return again || cannotRun(check) ? notAccessible(check, offers) : run(offer);
            }
        }
        if (again) {
            return notAccessible(check, offers);
        }
        List<FindingRecorded> truth = truth(check, place, offers);
        if (random.nextDouble() < wrong) {
            List<Offer> others = offers.stream()
                    .filter(offer -> offer.condition() != Condition.NOT_ACCESSIBLE)
                    .filter(offer -> truth.stream().noneMatch(finding -> says(finding, offer)))
                    .toList();
            if (!others.isEmpty()) {
                wrongAnswers++;
                Offer other = others.get(random.nextInt(others.size()));
                return List.of(finding(
                        check,
                        Objects.requireNonNull(other.component()),
                        Objects.requireNonNull(other.condition()),
                        other.place(),
                        other.agent(),
                        null));
            }
        }
        return truth.isEmpty() ? notAccessible(check, offers) : List.copyOf(truth);
    }

    private boolean cannotRun(CheckCode check) {
        return check == CheckCode.COMPARE_FORCES_WITH_RECORD || (!lane.lane().trace() && NEED_A_TRACE.contains(check));
    }

    private List<Entry> run(Offer offer) {
        return switch (Objects.requireNonNull(offer.rollerTest())) {
            case PARKING -> List.of(lane.parking(state, Stage.DIAGNOSTIC, false, random));
            case SERVICE, SECONDARY -> {
                Integer number = offer.place().axle();
                List<Axle> axles = state.vehicle().axles().stream()
                        .filter(axle -> number == null || axle.number() == number)
                        .toList();
                yield List.of(lane.service(state, axles, Stage.DIAGNOSTIC, false, random));
            }
        };
    }

    private List<FindingRecorded> truth(CheckCode check, Place place, List<Offer> offers) {
        if (check == CheckCode.OPEN_NIPPLE_ON_DRAGGING_WHEEL || check == CheckCode.OPEN_UNION_ABOVE_HOSE) {
            FaultForm.Trapped trapped = state.wheel(place).trapped();
            boolean held = check == CheckCode.OPEN_UNION_ABOVE_HOSE
                    ? trapped == FaultForm.Trapped.HOSE
                    : trapped != FaultForm.Trapped.NOTHING;
            return List.of(finding(
                    check, Component.FLEXIBLE_HOSE, held ? Condition.RESTRICTED : Condition.SOUND, place, null, null));
        }
        List<FindingRecorded> seen = new ArrayList<>();
        Set<Component> looked = new LinkedHashSet<>();
        for (Offer offer : offers) {
            if (offer.component() != null && offer.condition() != Condition.NOT_ACCESSIBLE) {
                looked.add(offer.component());
            }
        }
        for (Component component : looked) {
            seen.addAll(faults(check, component, place, offers));
        }
        seen.addAll(drags(check, place, offers));
        for (Offer offer : offers) {
            Component component = offer.component();
            if (component != null
                    && offer.condition() == Condition.SOUND
                    && seen.stream().noneMatch(finding -> finding.component() == component)) {
                seen.add(finding(check, component, Condition.SOUND, offer.place(), null, measured(offer, place)));
            }
        }
        return seen;
    }

    private List<FindingRecorded> faults(CheckCode check, Component component, Place place, List<Offer> offers) {
        List<FindingRecorded> faults = new ArrayList<>();
        for (Sight sight : state.sights()) {
            if (sight.component() == component && sight.shownBy(check) && meets(sight.place(), place)) {
                Offer offered = offers.stream()
                        .filter(offer -> offer.component() == component && offer.condition() == sight.condition())
                        .findFirst()
                        .orElse(null);
                boolean named = offers.stream()
                        .anyMatch(offer -> offer.component() == component
                                && offer.condition() == sight.condition()
                                && offer.agent() == sight.agent());
                faults.add(finding(
                        check,
                        component,
                        sight.condition(),
                        place.covers(sight.place()) ? sight.place() : place,
                        named ? sight.agent() : null,
                        offered == null ? null : measured(offered, sight.place())));
            }
        }
        return faults;
    }

    /** A wheel that is hard to turn, or the hub of one that ran hot. */
    private List<FindingRecorded> drags(CheckCode check, Place place, List<Offer> offers) {
        boolean byHand = check == CheckCode.WHEEL_TURN_BY_HAND;
        if (!byHand && check != CheckCode.HUB_HEAT_COMPARISON) {
            return List.of();
        }
        List<FindingRecorded> drags = new ArrayList<>();
        for (WheelState wheel : state.wheelsIn(place)) {
            boolean drag = wheel.value(PhysicalQuantity.DRAG, 0, false) >= table.value("stuck-wheel-drag");
            for (Offer offer : offers) {
                Condition condition = offer.condition();
                if (drag && (condition == Condition.TIGHT || condition == Condition.HEAT_MARKED)) {
                    drags.add(finding(
                            check, Objects.requireNonNull(offer.component()), condition, wheel.place(), null, null));
                }
            }
        }
        return drags;
    }

    private static boolean meets(Place sight, Place asked) {
        return asked.covers(sight) || sight.covers(asked);
    }

    private static boolean says(FindingRecorded finding, Offer offer) {
        return finding.component() == offer.component()
                && finding.condition() == offer.condition()
                && finding.place().meets(offer.place())
                && (offer.agent() == null || finding.agent() == offer.agent());
    }

    private List<Entry> notAccessible(CheckCode check, List<Offer> offers) {
        for (Offer offer : offers) {
            if (offer.condition() == Condition.NOT_ACCESSIBLE) {
                return List.of(finding(
                        check,
                        Objects.requireNonNull(offer.component()),
                        Condition.NOT_ACCESSIBLE,
                        offer.place(),
                        null,
                        null));
            }
        }
        return List.of();
    }

    private @Nullable Measurement measured(Offer offer, Place place) {
        MeasuredQuantity quantity = offer.measure();
        if (quantity == null) {
            return null;
        }
        double value = state.measured(place, quantity);
        if (Double.isNaN(value)) {
            if (offer.condition() != Condition.SOUND && quantity != MeasuredQuantity.LEVER_TRAVEL) {
                return null;
            }
            value = offer.condition() == Condition.SOUND
                    ? table.measure(quantity).draw(random)
                    : table.range("long-lever-travel").draw(random);
        }
        BigDecimal rounded = new BigDecimal(value, new MathContext(4));
        return new Measurement(quantity, rounded, null, rounded.toPlainString());
    }

    private static FindingRecorded finding(
            CheckCode check,
            Component component,
            Condition condition,
            Place place,
            @Nullable Agent agent,
            @Nullable Measurement measurement) {
        return new FindingRecorded(
                FindingStage.AS_FOUND, component, condition, place, check, null, agent, measurement, null, List.of());
    }
}
