package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.axlecause.access.PriceListStore;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.inference.RuleBase;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.PastCases;
import org.axlecause.judgement.PolicyChoice;
import org.axlecause.judgement.WeightsChoice;
import org.jspecify.annotations.Nullable;

/** Recalls stored cases with their histories, at the prices of today. */
@ApplicationScoped
class RecallCases implements PastCases {

    private final PastCaseStore pastCases;
    private final SiteStore sites;
    private final PriceListStore priceLists;
    private final PolicyChoice policies;
    private final WeightsChoice weights;
    private final RuleBase rules;

    RecallCases(
            PastCaseStore pastCases,
            SiteStore sites,
            PriceListStore priceLists,
            PolicyChoice policies,
            WeightsChoice weights,
            RuleBase rules) {
        this.pastCases = pastCases;
        this.sites = sites;
        this.priceLists = priceLists;
        this.policies = policies;
        this.weights = weights;
        this.rules = rules;
    }

    @Override
    public List<Run> runs(Wanted wanted, int size) {
        return pastCases.runs(wanted, size);
    }

    @Override
    public List<Past> recall(Wanted wanted, Run run) {
        Map<String, Map<EntryId, String>> figures = pastCases.figures(wanted, run);
        Map<String, Optional<Site>> known = new HashMap<>();
        Map<String, Optional<PriceList>> prices = new HashMap<>();
        List<Past> recalled = new ArrayList<>();
        pastCases.histories(wanted, run).forEach((reference, events) -> {
            List<Recorded> entries = Histories.read(events, figures.getOrDefault(reference, Map.of()));
            Recorded presented = Histories.standing(entries, VehiclePresented.class).stream()
                    .findFirst()
                    .orElse(null);
            if (presented == null) {
                return;
            }
            known.computeIfAbsent(((VehiclePresented) presented.entry()).site(), sites::find)
                    .ifPresent(site -> {
                        PriceList list = prices.computeIfAbsent(site.site(), priceLists::newest)
                                .orElse(null);
                        recalled.add(past(new History(reference, entries), presented, site, list));
                    });
        });
        return List.copyOf(recalled);
    }

    private Past past(History history, Recorded presented, Site site, @Nullable PriceList list) {
        OffsetDateTime moment = presented.time();
        LocalDate day = moment.atZoneSameInstant(site.zone()).toLocalDate();
        List<Recorded> adopted = Histories.standing(history.entries(), PolicyAdopted.class);
        Matter matter = new Matter(
                history,
                site.terms(),
                policies.policyFor(
                        site.site(),
                        site.region(),
                        day,
                        moment,
                        adopted.isEmpty()
                                ? null
                                : (PolicyAdopted)
                                        adopted.get(adopted.size() - 1).entry()),
                weights.at(moment),
                list,
                null);
        return new Past(matter, site.region(), JudgedOf.of(matter, site, rules.version()));
    }

    @Override
    public Map<String, String> lastingDocuments(List<Past> cases) {
        Map<String, String> judgedOf = new TreeMap<>();
        for (Past past : cases) {
            String line = past.judgedOf();
            if (line != null) {
                judgedOf.put(past.matter().history().reference(), line);
            }
        }
        return pastCases.documents(judgedOf, rules.version());
    }

    @Override
    public String document(Past past, Judgement judgement) {
        String reference = past.matter().history().reference();
        List<StoredEvent> events = pastCases
                .histories(new Wanted(null, null, null, null), new Run(reference, reference, 1))
                .getOrDefault(reference, List.of());
        return CaseDocument.of(judgement, rules.version(), Histories.presentations(events))
                .text();
    }
}
