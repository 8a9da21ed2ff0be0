package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.Place;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RoadDeviation;
import org.axlecause.facts.Stage;
import org.jspecify.annotations.Nullable;

/** Gathers what the tests show by a regime's formulas and hands it out in one order. */
final class RegimeFigureSheet {

    private final RegimeTerms terms;
    private final List<Figure> figures = new ArrayList<>();
    private final List<Exemption> exemptions = new ArrayList<>();
    private final List<RoadDeviation> deviations = new ArrayList<>();
    private final List<LimitRisk> risks = new ArrayList<>();
    private final List<RegimeGap> gaps = new ArrayList<>();

    RegimeFigureSheet(RegimeTerms terms) {
        this.terms = terms;
    }

    /** The test that figures come from. */
    record Test(EntryId id, Stage stage, BrakeSystem brake) {}

    void show(
            FigureKind kind,
            Test test,
            Place place,
            BigDecimal value,
            @Nullable BigDecimal uncertainty,
            @Nullable String basis) {
        show(kind, test, place, value, uncertainty, basis, null);
    }

    /** The same with the distribution of a figure whose uncertainty was simulated. */
    void show(
            FigureKind kind,
            Test test,
            Place place,
            BigDecimal value,
            @Nullable BigDecimal uncertainty,
            @Nullable String basis,
            MonteCarlo.@Nullable Result simulated) {
        Figure figure = new Figure(kind, test.id(), test.stage(), test.brake(), place, value, uncertainty, true, basis);
        figures.add(figure);
        weigh(figure, simulated);
    }

    /** Weighs how sure the verdicts on a figure are that the test alone shows. */
    void weigh(Figure figure, MonteCarlo.@Nullable Result simulated) {
        for (Limit limit : terms.limits()) {
            LimitRisk risk = limit.isAbout(figure) ? Conformity.risk(figure, limit, simulated) : null;
            if (risk != null) {
                risks.add(risk);
            }
        }
    }

    void cannotShow(FigureKind kind, Test test, Place place, String why) {
        figures.add(new Figure(kind, test.id(), test.stage(), test.brake(), place, null, null, false, why));
    }

    void exempt(FigureKind kind, Test test, Place place, String why) {
        exemptions.add(new Exemption(kind, test.id(), test.stage(), test.brake(), place, why));
    }

    void deviates(RoadDeviation deviation) {
        deviations.add(deviation);
    }

    void lacks(RegimeGap gap) {
        if (!gaps.contains(gap)) {
            gaps.add(gap);
        }
    }

    RegimeSheet sorted() {
        figures.sort(RegimeFigures.ORDER);
        exemptions.sort(Comparator.comparing(Exemption::test)
                .thenComparing(Exemption::place)
                .thenComparing(Exemption::kind)
                .thenComparing(Exemption::says));
        deviations.sort(Comparator.comparing(RoadDeviation::test));
        risks.removeIf(risk -> exemptions.stream().anyMatch(exemption -> exemption.isOf(risk.figure())));
        risks.sort(Comparator.comparing(LimitRisk::figure, RegimeFigures.ORDER)
                .thenComparing(risk -> risk.limit().shown())
                .thenComparing(risk -> String.valueOf(risk.limit().severity())));
        gaps.sort(Comparator.comparing(RegimeGap::code)
                .thenComparing(RegimeGap::place)
                .thenComparing(RegimeGap::says));
        return new RegimeSheet(figures, exemptions, deviations, risks, gaps);
    }
}
