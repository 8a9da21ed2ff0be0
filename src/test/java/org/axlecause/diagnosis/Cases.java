package org.axlecause.diagnosis;

import static org.axlecause.facts.Because.because;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.Side;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Vehicle;

/** Vehicles, evidence and inputs of the diagnosis tests. */
final class Cases {

    static final CauseModel MODEL = CauseModel.load();
    static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    static final Place FRONT_LEFT = Place.ofWheel(1, Side.LEFT);
    static final Place FRONT_RIGHT = Place.ofWheel(1, Side.RIGHT);
    static final Place REAR_LEFT = Place.ofWheel(2, Side.LEFT);
    static final Place REAR_RIGHT = Place.ofWheel(2, Side.RIGHT);
    static final Place REAR = Place.ofAxle(2);

    private Cases() {}

    /** A van of ten and more years with front discs, rear simplex drums and a diagonal split. */
    static Vehicle van() {
        return vehicle(
                "N1",
                CircuitSplit.DIAGONAL,
                new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE),
                new Axle(2, false, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.CABLE_ON_SERVICE_SHOES));
    }

    static Vehicle vehicle(String category, CircuitSplit split, Axle... axles) {
        return new Vehicle(
                category,
                "Corvane",
                "Portal",
                LocalDate.of(2015, 9, 14),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                false,
                false,
                split,
                true,
                "DOT 4",
                List.of(axles),
                null);
    }

    static Symptom shows(SymptomCode code, Place place) {
        return new Symptom(code, place, Strength.CLEAR, because("SYM-000"));
    }

    static SymptomObservable couldShow(SymptomCode code, Place place) {
        return new SymptomObservable(code, place, because("SYM-000"));
    }

    static Proof proved(CauseCode code, Place place) {
        return new Proof(code, place, because("CAU-000"));
    }

    static Refutation ruledOut(CauseCode code, Place place) {
        return new Refutation(code, place, because("CAU-000"));
    }

    static Finding found(Component component, Condition condition, Place place) {
        return found(component, condition, place, null, null);
    }

    static Finding found(Component component, Condition condition, Place place, Agent agent, CheckCode check) {
        return new Finding(
                new EntryId("/test", component + "-" + condition + "-" + place),
                FindingStage.AS_FOUND,
                component,
                condition,
                place,
                check,
                null,
                agent,
                null);
    }

    /** Sorts a handful of evidence into the input of a diagnosis. */
    static DiagnosisInput on(Vehicle vehicle, Object... evidence) {
        List<Symptom> symptoms = new ArrayList<>();
        List<SymptomObservable> observable = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        List<Proof> proofs = new ArrayList<>();
        List<Refutation> refutations = new ArrayList<>();
        Set<Integer> opened = new HashSet<>();
        boolean danger = false;
        boolean openingBarred = false;
        for (Object piece : evidence) {
            if (piece instanceof Symptom symptom) {
                symptoms.add(symptom);
            } else if (piece instanceof SymptomObservable could) {
                observable.add(could);
            } else if (piece instanceof Finding finding) {
                findings.add(finding);
            } else if (piece instanceof Proof proof) {
                proofs.add(proof);
            } else if (piece instanceof Refutation refutation) {
                refutations.add(refutation);
            } else if (piece instanceof Opened axle) {
                opened.add(axle.axle());
            } else if (piece instanceof Danger) {
                danger = true;
            } else if (piece instanceof NoneOpenedYet) {
                openingBarred = true;
            } else {
                throw new IllegalArgumentException("no evidence: " + piece);
            }
        }
        return new DiagnosisInput(
                vehicle,
                DAY,
                CauseWeights.BOOK,
                symptoms,
                observable,
                findings,
                proofs,
                refutations,
                List.of(),
                List.of(),
                opened,
                danger,
                openingBarred);
    }

    record Opened(int axle) {}

    record Danger() {}

    record NoneOpenedYet() {}
}
