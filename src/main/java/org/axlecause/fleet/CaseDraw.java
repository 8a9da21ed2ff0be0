package org.axlecause.fleet;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.PresentationReason;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Side;
import org.axlecause.facts.Spot;
import org.axlecause.facts.Stage;
import org.axlecause.facts.VehiclePresented;
import org.jspecify.annotations.Nullable;

/** Draws cases: a vehicle, one or two faults, what they do, what the driver says and what the rollers show. */
public final class CaseDraw {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final int MOST_TRIES = 200;
    private static final int PAIR = 2;
    private static final BigDecimal SOON_AFTER = new BigDecimal("200000");

    private final FaultTable faults;
    private final VehicleTable table;
    private final VehicleDraw vehicles;
    private final String site;

    private CaseDraw(FaultTable faults, VehicleTable table, String site) {
        this.faults = faults;
        this.table = table;
        this.vehicles = new VehicleDraw(table);
        this.site = site;
    }

    /** Draws cases that are presented at a site. */
    public static CaseDraw at(String site, FaultTable faults) {
        return new CaseDraw(faults, VehicleTable.onClassPath(), site);
    }

    /** The case of a seed: the same one whenever and wherever it is drawn. */
    public DrawnCase of(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int wanted = random.nextDouble() < faults.twoFaults() ? PAIR : 1;
        for (int tries = 0; tries < MOST_TRIES; tries++) {
            DrawnCase drawn = attempt(seed, wanted, random.split());
            if (drawn != null) {
                return drawn;
            }
        }
        throw new IllegalStateException("Seed " + seed + " gives no vehicle that anyone would present");
    }

    /** Each fault must be one that would bring the vehicle in by itself: nobody looks for what nothing speaks of. */
    private @Nullable DrawnCase attempt(long seed, int wanted, SplittableRandom random) {
        double age = table.range("age").draw(random);
        long sound = random.nextLong();
        Lane lane = new Lane(
                chance("shares.trace", random),
                chance("shares.pedal-sensor", random),
                chance("shares.axle-load-told", random));
        TestLane testLane = new TestLane(table, lane);
        List<Wrong> wrongs = new ArrayList<>();
        VehicleState vehicle = vehicles.draw(age, DAY, new SplittableRandom(sound));
        while (wrongs.size() < wanted) {
            FaultTable.Drawn next = faults.draw(vehicle.vehicle(), age, random);
            Fault fault = new Fault(next.kind().code(), next.kind().places(next.axle(), random));
            if (wrongs.stream().noneMatch(other -> clash(other.fault, fault))) {
                wrongs.add(new Wrong(next, fault, random.nextLong()));
            }
        }
        for (Wrong wrong : wrongs) {
            if (presented(seed, age, sound, List.of(wrong), testLane, random.split()) == null) {
                return null;
            }
        }
        return presented(seed, age, sound, wrongs, testLane, random);
    }

    private @Nullable DrawnCase presented(
            long seed, double age, long sound, List<Wrong> wrongs, TestLane lane, SplittableRandom random) {
        VehicleState state = vehicles.draw(age, DAY, new SplittableRandom(sound));
        List<Fault> drawn = new ArrayList<>();
        List<RecentWork> work = new ArrayList<>();
        for (Wrong wrong : wrongs) {
            drawn.add(put(wrong.drawn, wrong.fault, state, work, new SplittableRandom(wrong.seed)));
        }
        List<ComplaintCode> complaints = new Complaints(state, table).draw(random);
        List<RollerTestRecorded> tests = new ArrayList<>();
        tests.add(lane.service(state, state.vehicle().axles(), Stage.ARRIVAL, true, random));
        tests.add(lane.parking(state, Stage.ARRIVAL, true, random));
        if (!new Notice(table).taken(state, lane.lane(), complaints, tests)) {
            return null;
        }
        return new DrawnCase(
                seed,
                DAY,
                drawn,
                state.brought(),
                new VehiclePresented(
                        site,
                        complaints.isEmpty() ? PresentationReason.FAILED_INSPECTION : PresentationReason.COMPLAINT,
                        null,
                        null,
                        state.vehicle(),
                        List.of(),
                        complaints,
                        work),
                tests,
                new Technician(state, lane, table, faults.wrongAnswer(), random.split()));
    }

    /** A fault that a vehicle gets, with the seed of how bad it is. */
    private record Wrong(FaultTable.Drawn drawn, Fault fault, long seed) {}

    /** The same fault twice, or two that can't be at one place at once. */
    private static boolean clash(Fault one, Fault other) {
        boolean meet =
                one.places().stream().anyMatch(place -> other.places().stream().anyMatch(place::meets));
        return meet
                && (one.code() == other.code()
                        || against(one.code(), other.code())
                        || against(other.code(), one.code()));
    }

    private static boolean against(CauseCode one, CauseCode other) {
        return switch (one) {
            case WHEEL_CYLINDER_PISTON_STUCK -> other == CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT;
            case ADJUSTER_NOT_TAKEN_UP, ADJUSTER_ON_WRONG_SIDE ->
                other == CauseCode.SHOES_OVER_ADJUSTED || other == CauseCode.ADJUSTER_ON_WRONG_SIDE;
            case PARKING_CABLE_STRETCHED -> other == CauseCode.PARKING_CABLE_OVER_TIGHT;
            case LINING_SOAKED_EARLIER -> other == CauseCode.WHEEL_CYLINDER_LEAKING;
            default -> false;
        };
    }

    private Fault put(
            FaultTable.Drawn drawn, Fault fault, VehicleState state, List<RecentWork> work, SplittableRandom random) {
        FaultKind kind = drawn.kind();
        List<Place> places = new ArrayList<>();
        Side oneSide = random.nextBoolean() ? Side.LEFT : Side.RIGHT;
        for (Place place : fault.places()) {
            FaultForm form = kind.form(random);
            Place at = kind.spots() ? spot(place, drawn.axle(), random) : place;
            places.add(at);
            physics(form, at, oneSide, state, random);
            sights(form, at, drawn.axle(), state, random);
        }
        if (kind.recentWork() != null) {
            work.add(recent(kind.recentWork(), places.get(0), drawn.axle()));
        }
        return new Fault(fault.code(), places);
    }

    private static Place spot(Place wheel, Axle axle, RandomGenerator random) {
        BrakeLayout layout = axle.brake() == null ? BrakeLayout.DRUM_SIMPLEX : axle.brake();
        List<Spot> spots =
                switch (layout) {
                    case DRUM_DUO_SERVO -> List.of(Spot.PRIMARY, Spot.SECONDARY);
                    case DRUM_DUPLEX -> List.of(Spot.UPPER, Spot.LOWER);
                    case DRUM_SIMPLEX -> List.of(Spot.LEADING, Spot.TRAILING);
                    case DISC_FLOATING, DISC_FIXED -> List.of(Spot.INNER, Spot.OUTER);
                };
        return new Place(wheel.axle(), wheel.side(), spots.get(random.nextInt(spots.size())), null);
    }

    private static void physics(FaultForm form, Place at, Side oneSide, VehicleState state, RandomGenerator random) {
        List<WheelState> wheels =
                switch (form.wheels()) {
                    case OWN -> state.wheelsIn(at.circuit() == null ? at.wheel() : at);
                    case ONE -> state.wheelsIn(at.on(oneSide));
                    case CIRCUIT -> {
                        Integer circuit = state.vehicle().circuitOf(at);
                        yield state.wheelsIn(circuit == null ? at : Place.ofCircuit(circuit));
                    }
                };
        form.does().forEach((quantity, range) -> {
            double alike = range.draw(random);
            for (WheelState wheel : wheels) {
                wheel.change(quantity, form.each() ? range.draw(random) : alike, form.firstRun());
            }
        });
        for (WheelState wheel : wheels) {
            wheel.trap(form.trapped());
            if (at.spot() != null) {
                wheel.stuckAt(at.spot());
            }
        }
    }

    private static void sights(FaultForm form, Place at, Axle axle, VehicleState state, RandomGenerator random) {
        for (FaultForm.Trace trace : form.found()) {
            boolean here = trace.on() == null || (trace.on() == FaultForm.On.DRUM) == axle.isDrum();
            if (here && random.nextDouble() < trace.chance()) {
                Place place =
                        switch (trace.at()) {
                            case FAULT -> at.wheel();
                            case SPOT -> at;
                            case AXLE -> at.axlePlace();
                            case VEHICLE -> Place.VEHICLE;
                        };
                state.see(new Sight(trace.component(), trace.condition(), place, trace.agent(), trace.by()));
                if (trace.brings() != null) {
                    state.bring(new Fault(trace.brings(), List.of(place)));
                }
            }
        }
        form.measures().forEach((quantity, range) -> state.measure(at, quantity, range.draw(random)));
    }

    private static RecentWork recent(String word, Place at, Axle axle) {
        ScopeItem item =
                switch (word) {
                    case "friction" -> axle.isDrum() ? ScopeItem.SHOE_SET : ScopeItem.PAD_SET;
                    case "wheels" -> axle.isDrum() ? ScopeItem.DRUM : ScopeItem.DISC;
                    case "wheel-cylinder" -> ScopeItem.WHEEL_CYLINDER;
                    case "brake-pipe" -> ScopeItem.BRAKE_PIPE;
                    case "brake-fluid" -> ScopeItem.BRAKE_FLUID;
                    default -> throw new IllegalStateException("recent work '" + word + "' is not known");
                };
        Place place = at.circuit() == null && at.axle() != null ? Place.ofAxle(axle.number()) : Place.VEHICLE;
        return new RecentWork(item, place, DAY.minusDays(14), SOON_AFTER);
    }

    private boolean chance(String name, RandomGenerator random) {
        return random.nextDouble() < table.value(name);
    }
}
