package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Side;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;

/** Answers questions over many cases, each from one state of the data. */
@ApplicationScoped
public class AskStatistics {

    private final AskCauses causes;
    private final AskRepairs repairs;
    private final AskReturns returns;
    private final AskSites sites;
    private final AskChecks checks;
    private final Snapshots snapshots;
    private final DrawCharts drawCharts;

    AskStatistics(
            AskCauses causes,
            AskRepairs repairs,
            AskReturns returns,
            AskSites sites,
            AskChecks checks,
            Snapshots snapshots,
            DrawCharts drawCharts) {
        this.causes = causes;
        this.repairs = repairs;
        this.returns = returns;
        this.sites = sites;
        this.checks = checks;
        this.snapshots = snapshots;
        this.drawCharts = drawCharts;
    }

    /** The answer to a question. */
    public Told answer(Subject subject, Asked asked, Actor actor) {
        return switch (subject) {
            case CAUSES -> causes.answer(asked, actor);
            case REPAIRS -> repairs.answer(asked, actor);
            case RETURNS -> returns.answer(asked, actor);
            case SITES -> sites.answer(asked, actor);
            case CHECKS -> checks.answer(asked, actor);
        };
    }

    /** A tag that is another one as soon as what this page would tell this actor of the question may be. */
    public String tag(String page, Asked asked, Actor actor) {
        return snapshots.tag(page, asked, "page", actor);
    }

    /** The words that are valid in a question, by the names of its parameters. */
    public Map<String, List<String>> words(Subject subject, Actor actor) {
        Map<String, List<String>> words =
                new LinkedHashMap<>(snapshots.of(new Asked(Map.of()), actor, ReadQuestion::known));
        switch (subject) {
            case CAUSES -> {
                words.put("cause", codes(CauseCode.values()));
                words.put("axle", AskCauses.AXLES);
                words.put("side", codes(Side.values()));
                words.put("role", AskCauses.ROLES);
                words.put("by", codes(GroupBy.values()));
                words.put("compare", AskCauses.COMPARABLE);
            }
            case REPAIRS -> {
                words.put("item", codes(ScopeItem.values()));
                words.put("by", codes(GroupBy.ofCases().toArray()));
            }
            case RETURNS -> {
                words.put("item", codes(ScopeItem.values()));
                words.put("by", AskReturns.BY);
            }
            case SITES -> {
                words.put("measure", codes(AskSites.Measure.values()));
                words.put("cause", codes(CauseCode.values()));
            }
            case CHECKS -> {
                words.put("check", codes(CheckCode.values()));
                words.put("cause", codes(CauseCode.values()));
                words.put("moment", AskChecks.MOMENTS);
                words.put("by", codes(GroupBy.ofCases().toArray()));
            }
        }
        return words;
    }

    private static List<String> codes(Object[] values) {
        return Stream.of(values).map(Object::toString).toList();
    }

    /** The one chart of an answer as SVG; refuses a question whose answer has none or several. */
    public String svg(Subject subject, Told told) {
        if (told.charts().size() == 1) {
            return drawCharts.svg(told.charts().get(0), told.asOf(), subject.toString());
        }
        throw RefusedException.invalidPayload(List.of(
                switch (subject) {
                    case CAUSES ->
                        new Problem.Cause(
                                "/part",
                                "A chart of causes shows `part=pareto`, or `part=trend` of one `cause`; this question has "
                                        + told.charts().size() + " charts. Ask for one of them, or for JSON or CSV.");
                    case CHECKS ->
                        new Problem.Cause(
                                "/moment",
                                "A chart of probabilities shows one moment. Set `moment` to arrival or before-opening.");
                    case REPAIRS, RETURNS, SITES ->
                        new Problem.Cause("", "There is no chart of this answer. Ask for JSON or CSV.");
                }));
    }
}
