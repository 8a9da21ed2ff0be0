package org.axlecause.casefile;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.axlecause.access.PriceListStore;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.History;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.Party;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.SiteTerms;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.inference.RuleBase;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.repair.ScopeLine;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/** Judges a case from its whole history and keeps what follows, inside the transaction that has locked it. */
@ApplicationScoped
class JudgeCase implements CaseJudge {

    /**
     * Terms of a case whose site is not known yet; nothing that depends on them is concluded. Its currency is the code of
     * ISO 4217 for none.
     */
    private static final SiteTerms NO_SITE = new SiteTerms("", ZoneOffset.UTC, "XXX", "");

    private final EventStore events;
    private final FiguresStore figures;
    private final CaseStore cases;
    private final JudgementStore judgements;
    private final SiteStore sites;
    private final PriceListStore priceLists;
    private final Policy policy;
    private final RuleBase rules;
    private final Judge judge;
    private final CaseWatch watch;
    private final Clock clock;

    JudgeCase(
            EventStore events,
            FiguresStore figures,
            CaseStore cases,
            JudgementStore judgements,
            SiteStore sites,
            PriceListStore priceLists,
            Policy policy,
            RuleBase rules,
            Judge judge,
            CaseWatch watch,
            Clock clock) {
        this.events = events;
        this.figures = figures;
        this.cases = cases;
        this.judgements = judgements;
        this.sites = sites;
        this.priceLists = priceLists;
        this.policy = policy;
        this.rules = rules;
        this.judge = judge;
        this.watch = watch;
        this.clock = clock;
    }

    @Override
    public String judgeAndKeep(String reference) {
        Map<EntryId, JsonNode> data = new TreeMap<>();
        List<Recorded> entries = new ArrayList<>();
        Map<EntryId, String> kept = figures.find(reference);
        for (StoredEvent event : events.history(reference)) {
            JsonNode sent = Json.read(event.body()).path("data");
            data.put(event.id(), sent);
            EntryType type = Objects.requireNonNull(EntryType.of(event.type()), event.type());
            entries.add(new Recorded(
                    event.id(), event.time(), EntryReader.read(type, sent), testFigures(kept.get(event.id()))));
        }
        History history = new History(reference, entries);
        Judgement judgement = judge.judge(matter(history, null));
        String document = CaseDocument.of(judgement, rules.version(), data);
        String before = cases.find(reference).map(StoredCase::document).orElse(null);
        JudgedCase judged = judged(judgement, document, history);
        OffsetDateTime now = OffsetDateTime.now(clock);
        cases.save(reference, judged, now);
        keepIfActedOn(reference, history, judgement, document, now);
        watch.judged(CaseChange.between(before, judged.columns(), reference, document));
        return document;
    }

    @Override
    public String judge(History history, Map<EntryId, JsonNode> data, @Nullable LocalDate asOf) {
        return CaseDocument.of(judge.judge(matter(history, asOf)), rules.version(), data);
    }

    private Matter matter(History history, @Nullable LocalDate asOf) {
        SiteTerms terms = site(history);
        PriceList prices = terms.equals(NO_SITE) ? null : priceList(terms.site(), history);
        return new Matter(history, terms, policy, prices, asOf);
    }

    private SiteTerms site(History history) {
        return standing(history, VehiclePresented.class).stream()
                .findFirst()
                .flatMap(recorded -> sites.find(((VehiclePresented) recorded.entry()).site()))
                .map(Site::terms)
                .orElse(NO_SITE);
    }

    /** The list of the first customer decision, which fixes the prices; until then the newest. */
    private @Nullable PriceList priceList(String site, History history) {
        return standing(history, ScopeDecided.class).stream()
                .filter(recorded -> ((ScopeDecided) recorded.entry())
                        .decisions().stream().map(LineDecision::by).anyMatch(Party.CUSTOMER::equals))
                .findFirst()
                .map(recorded -> priceLists.at(site, recorded.time()))
                .orElseGet(() -> priceLists.newest(site))
                .orElse(null);
    }

    private static List<Recorded> standing(History history, Class<? extends Entry> type) {
        List<EntryId> withdrawn = history.entries().stream()
                .filter(recorded -> recorded.entry() instanceof EntryWithdrawn)
                .map(recorded -> ((EntryWithdrawn) recorded.entry()).target())
                .toList();
        return history.entries().stream()
                .filter(recorded -> type.isInstance(recorded.entry()) && !withdrawn.contains(recorded.id()))
                .toList();
    }

    private JudgedCase judged(Judgement judgement, String document, History history) {
        VehiclePresented presented = history.entries().stream()
                .filter(recorded -> recorded.id().equals(judgement.presentation()))
                .map(recorded -> (VehiclePresented) recorded.entry())
                .findFirst()
                .orElse(null);
        return new JudgedCase(
                new CaseColumns(
                        judgement.site(),
                        judgement.status().toString(),
                        judgement.opened(),
                        judgement.openedDay(),
                        judgement.version(),
                        presented == null ? null : presented.vehicle().make(),
                        presented == null ? null : presented.vehicle().model()),
                document,
                judgement.policy().code() + " " + judgement.policy().version(),
                rules.version(),
                judgement.causes().stream()
                        .map(cause -> new CauseRow(
                                cause.code().toString(),
                                cause.place(),
                                cause.standing().toString(),
                                cause.probability(),
                                cause.root()))
                        .toList(),
                judgement.scope().stream().map(JudgeCase::row).toList());
    }

    private static ScopeLineRow row(ScopeLine line) {
        return new ScopeLineRow(
                line.id(),
                line.action().toString(),
                line.item().toString(),
                line.place(),
                line.extent().toString(),
                line.quantity().value(),
                line.necessity().toString(),
                line.standing().toString(),
                line.policyClause() == null ? null : line.policyClause().toString(),
                null,
                null);
    }

    /** Keeps the judgement that a decision or a closing was made on, as it stands right after it. */
    private void keepIfActedOn(
            String reference, History history, Judgement judgement, String document, OffsetDateTime now) {
        Map<PastJudgement.Occasion, Class<? extends Entry>> occasions = new HashMap<>();
        occasions.put(PastJudgement.Occasion.DECISION, ScopeDecided.class);
        occasions.put(PastJudgement.Occasion.CLOSING, CaseClosed.class);
        Recorded last = history.entries().get(history.entries().size() - 1);
        occasions.forEach((occasion, type) -> {
            if (type.isInstance(last.entry())) {
                judgements.save(
                        reference, new PastJudgement(judgement.version(), rules.version(), occasion, document, now));
            }
        });
    }

    private static @Nullable TestFigures testFigures(@Nullable String kept) {
        try {
            return kept == null ? null : Json.mapper().readValue(kept, TestFigures.class);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("Kept figures can't be read", broken);
        }
    }
}
