package org.axlecause.diagnosis;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Vehicle;

/**
 * How likely the cause model holds a cause on an axle before anything is seen.
 *
 * @param cause the cause
 * @param axle number of the axle
 * @param group group of the axle
 * @param weight weight of the cause in that group, above 0
 * @param share its probability at the axle, on either wheel or both; of a cause of a circuit or of the vehicle its
 *     probability anywhere. Above 0 and below 1
 */
public record AxleShare(CauseCode cause, int axle, PriorGroup group, double weight, double share) {

    static List<AxleShare> of(CauseModel model, Vehicle vehicle, LocalDate day) {
        Settings settings = model.settings();
        Possibilities possibilities = model.possibilities(vehicle);
        Priors.Age age = Priors.Age.of(new Layout(vehicle).age(day), settings);
        Priors priors = possibilities.priors(CauseWeights.BOOK, age);
        List<AxleShare> shares = new ArrayList<>();
        for (Axle axle : vehicle.axles()) {
            WheelBrake brake = WheelBrake.of(axle);
            if (brake == null) {
                continue;
            }
            PriorGroup group = age.group(brake);
            shares(model, possibilities.candidates(), priors, axle.number()).forEach((code, share) -> {
                Cause cause = model.cause(code);
                Double weight = cause.weights().of(group);
                if (weight != null && cause.fits(vehicle, axle)) {
                    shares.add(
                            new AxleShare(code, axle.number(), group, weight, Math.min(share, settings.mostPrior())));
                }
            });
        }
        return List.copyOf(shares);
    }

    private static Map<CauseCode, Double> shares(
            CauseModel model, List<Candidate> candidates, Priors priors, int axle) {
        Map<CauseCode, Double> shares = new EnumMap<>(CauseCode.class);
        for (int number = 0; number < candidates.size(); number++) {
            Candidate candidate = candidates.get(number);
            Integer at = candidate.place().axle();
            if (at == null || at == axle) {
                Double bothSides = model.cause(candidate.code()).bothSides();
                double withPair = bothSides == null ? 1 : 1 - bothSides;
                shares.merge(candidate.code(), priors.of(number) / withPair, Double::sum);
            }
        }
        return shares;
    }
}
