package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.KeyNames;
import org.axlecause.access.ReadSites;
import org.axlecause.access.Role;
import org.axlecause.access.Site;
import org.axlecause.catalogue.Catalogue;
import org.axlecause.catalogue.CatalogueKind;
import org.axlecause.facts.LineKey;
import org.axlecause.policy.EditPolicies;
import org.axlecause.policy.PolicyDocument;
import org.axlecause.policy.PolicyDraft;
import org.axlecause.policy.PolicyViews.DraftView;
import org.axlecause.policy.PolicyViews.EffectiveView;
import org.axlecause.policy.PolicyViews.PublicationView;
import org.axlecause.policy.PolicyViews.VersionView;
import org.axlecause.policy.ReadLayers;
import org.axlecause.policy.ReadPolicies;
import org.axlecause.policy.TrialResult;
import org.axlecause.policy.TrialViews.SideBySide;
import org.axlecause.policy.TrialViews.TrialView;
import org.axlecause.policy.TrialViews.TrialWanted;
import org.axlecause.policy.TryPolicies;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.jspecify.annotations.Nullable;

/** Makes of policies, versions and trials what their pages show. */
@ApplicationScoped
class ShowPolicies {

    private static final Set<Role> EDITORS = Set.of(Role.POLICY);
    private static final List<String> NEAREST_FIRST = List.of("site", "region", "chain", "baseline");
    private static final Map<String, String> LAYERS = Map.of(
            "site", "Set by this site",
            "region", "Set by the region",
            "chain", "Set by the chain",
            "baseline", "Left as the release sets it");
    private static final List<String> CHANGED_FIRST = List.of("added", "dropped", "otherwise", "the same");
    private static final int AXLES_NOT_KNOWN = 0;

    private final ReadPolicies readPolicies;
    private final ReadLayers readLayers;
    private final EditPolicies editPolicies;
    private final TryPolicies tryPolicies;
    private final ReadSites readSites;
    private final KeyNames keyNames;
    private final Catalogue catalogue;
    private final PlainWords words;

    ShowPolicies(
            ReadPolicies readPolicies,
            ReadLayers readLayers,
            EditPolicies editPolicies,
            TryPolicies tryPolicies,
            ReadSites readSites,
            KeyNames keyNames,
            Catalogue catalogue,
            PlainWords words) {
        this.readPolicies = readPolicies;
        this.readLayers = readLayers;
        this.editPolicies = editPolicies;
        this.tryPolicies = tryPolicies;
        this.readSites = readSites;
        this.keyNames = keyNames;
        this.catalogue = catalogue;
        this.words = words;
    }

    static boolean mayEdit(Actor actor) {
        return actor.hasAny(EDITORS);
    }

    /** The policies that the actor may see, with what they are for. */
    List<PolicyInList> list(Actor actor) {
        return readPolicies.all(actor).stream()
                .map(policy -> new PolicyInList(
                        policy, policy.latest() == null ? "" : means(policy.name(), policy.latest(), actor)))
                .toList();
    }

    private String means(String name, int version, Actor actor) {
        return means(readPolicies.version(name, version, actor).document());
    }

    private static String means(@Nullable PolicyDocument document) {
        return document == null
                ? ""
                : PlainWords.stopped(PlainWords.sentence(Objects.requireNonNullElse(document.means(), "")));
    }

    /** A policy with what is known of it; refuses a name that neither a version nor a draft has. */
    PolicyHome home(String name, Actor actor) {
        ReadLayers.Beginning beginning = mayEdit(actor) ? readLayers.beginning(name, actor) : null;
        PolicyDraft draft = beginning == null ? null : beginning.draft();
        List<VersionView> versions = versions(name, draft != null, actor);
        return new PolicyHome(
                name,
                versions.isEmpty()
                        ? means(beginning == null ? null : beginning.document())
                        : means(name, versions.get(0).version(), actor),
                versions,
                beginning == null || draft == null ? null : DraftView.of(draft, beginning.document()),
                readSites.visible(actor),
                catalogue.written(CatalogueKind.CAUSES).stream()
                        .map(cause -> new CaseView.Option(
                                cause.path("code").asText(),
                                PlainWords.sentence(cause.path("text").asText())))
                        .sorted(Comparator.comparing(CaseView.Option::text))
                        .toList(),
                mayEdit(actor),
                keyNames.of(actor));
    }

    private List<VersionView> versions(String name, boolean mayBeNone, Actor actor) {
        try {
            return readPolicies.versions(name, actor);
        } catch (RefusedException refused) {
            if (mayBeNone && refused.problem().status() == Reason.NOT_FOUND.status()) {
                return List.of();
            }
            throw refused;
        }
    }

    /** What holds at a site; the first that the actor may see where none is named. */
    EffectivePage effective(String name, @Nullable String code, @Nullable Integer version, Actor actor) {
        List<Site> sites = readSites.visible(actor);
        String wanted =
                code != null ? code : sites.isEmpty() ? "" : sites.get(0).site();
        EffectiveView view = readPolicies.effective(name, wanted, version, actor);
        Map<String, List<EffectivePage.Clause>> byLayer = view.clauses().stream()
                .collect(Collectors.groupingBy(
                        clause -> clause.from(),
                        Collectors.mapping(
                                clause -> new EffectivePage.Clause(
                                        clause.sets().key(),
                                        PlainWords.sentence(clause.means()),
                                        EditLayer.says(clause.sets()),
                                        clause.lockedBy(),
                                        clause.source()),
                                Collectors.toList())));
        return new EffectivePage(
                view,
                sites.stream()
                        .filter(site -> site.site().equals(view.site()))
                        .map(Site::name)
                        .findFirst()
                        .orElse(view.site()),
                NEAREST_FIRST.stream()
                        .filter(byLayer::containsKey)
                        .map(layer -> new EffectivePage.Group(
                                layer, LAYERS.getOrDefault(layer, layer), byLayer.getOrDefault(layer, List.of())))
                        .toList());
    }

    /** The draft as it is about to be published. */
    PublicationForm publication(String name, Actor actor) {
        return publication(name, "", "", List.of(), actor);
    }

    private PublicationForm publication(String name, String from, String reason, List<String> wrong, Actor actor) {
        PolicyDraft draft = readPolicies.draft(name, actor);
        List<VersionView> versions = versions(name, true, actor);
        Integer since = versions.isEmpty() ? null : versions.get(0).version();
        Map<String, String> called = keyNames.of(actor);
        return new PublicationForm(
                name,
                draft.tag().toString(),
                draft.authors().stream()
                        .map(author -> called.getOrDefault(author, author))
                        .toList(),
                since,
                since == null
                        ? List.of()
                        : readPolicies
                                .comparison(name, since.toString(), "draft", actor)
                                .words(),
                from,
                reason,
                wrong);
    }

    /** Publishes the draft; null where that is done, else the form as it was typed with what keeps it from being published. */
    @Nullable
    PublicationForm publish(String name, Form form, Actor actor) {
        String tag = form.text("tag");
        try {
            editPolicies.publish(
                    name, '"' + tag + '"', new PublicationView(day(form.text("from")), form.text("reason")), actor);
            return null;
        } catch (RefusedException refused) {
            Problem problem = refused.problem();
            if (problem.status() == Reason.NOT_FOUND.status()) {
                throw refused;
            }
            List<String> wrong = problem.status() == Reason.PRECONDITION_FAILED.status()
                    ? List.of(
                            "The draft was written on since this page was opened. What it changes now is below: read it"
                                    + " and publish again.")
                    : problem.causes().isEmpty()
                            ? List.of(String.valueOf(problem.detail()))
                            : problem.causes().stream().map(Problem.Cause::text).toList();
            return publication(name, form.text("from"), form.text("reason"), wrong, actor);
        }
    }

    private static @Nullable LocalDate day(String text) {
        try {
            return text.isEmpty() ? null : LocalDate.parse(text);
        } catch (DateTimeParseException none) {
            return null;
        }
    }

    /** Begins a trial of what a form asks for; its id. */
    String begin(String name, Form form, Actor actor) {
        List<String> sites = form.all("site");
        LocalDate from = wantedDay(form, "from", "The first day");
        LocalDate to = wantedDay(form, "to", "The day after the last one");
        form.check();
        return tryPolicies
                .begin(
                        name,
                        new TrialWanted(
                                sites.isEmpty() ? null : List.copyOf(sites),
                                from,
                                to,
                                form.text("cause").isEmpty() ? null : form.text("cause")),
                        actor)
                .id()
                .toString();
    }

    private static @Nullable LocalDate wantedDay(Form form, String field, String words) {
        String text = form.text(field);
        LocalDate day = day(text);
        if (day == null && !text.isEmpty()) {
            form.wrong(field, words + " is \"" + text + "\"; expected is a day such as 2026-03-02.");
        }
        return day;
    }

    /** A trial in words. */
    TrialPage trial(String id, Actor actor) {
        TrialView trial = TrialView.of(tryPolicies.find(id, actor));
        TrialResult result = trial.result();
        Map<String, String> sites = readSites.visible(actor).stream().collect(Collectors.toMap(Site::site, Site::name));
        return new TrialPage(
                trial,
                tally("All cases", result.all()),
                result.byCause().entrySet().stream()
                        .map(each -> tally(cause(each.getKey()), each.getValue()))
                        .toList(),
                result.bySite().entrySet().stream()
                        .map(each -> tally(sites.getOrDefault(each.getKey(), each.getKey()), each.getValue()))
                        .toList(),
                result.examples().stream()
                        .map(example -> new TrialPage.Example(
                                example.reference(),
                                sites.getOrDefault(example.site(), example.site()),
                                cause(example.cause()),
                                Stream.of(
                                                told("Added", example.added()),
                                                told("Dropped", example.dropped()),
                                                told("Called for otherwise", example.otherNecessity()))
                                        .filter(words -> !words.isEmpty())
                                        .toList(),
                                example.money() == null ? "" : example.money()))
                        .toList());
    }

    private String cause(String code) {
        return catalogue
                .written(CatalogueKind.CAUSES, code)
                .map(cause -> PlainWords.sentence(cause.path("text").asText()))
                .orElse(code.equals("none") ? "No cause found" : EditLayer.plain(code));
    }

    private String told(String change, List<String> lines) {
        return lines.isEmpty()
                ? ""
                : lines.stream().map(this::line).collect(Collectors.joining("; ", change + ": ", ""));
    }

    /** A line by its id in words, with what a trial tells of it after a colon. */
    private String line(String told) {
        String[] parts = told.split(": ", 2);
        LineKey key = LineKey.ofId(parts[0]);
        String line = key == null
                ? EditLayer.plain(parts[0])
                : words.line(
                        key.action().toString(),
                        key.item().toString(),
                        PlainWords.place(Json.read(Json.text(key.place())), AXLES_NOT_KNOWN));
        return parts.length == 1 ? line : line + " (" + parts[1] + ")";
    }

    private static TrialPage.Tally tally(String of, TrialResult.Tally tally) {
        return new TrialPage.Tally(of, tally, money(tally.money()), money(tally.moneyWithRecommended()));
    }

    private static String money(Map<String, BigDecimal> amounts) {
        return amounts.entrySet().stream()
                .map(each -> each.getValue().toPlainString() + " " + each.getKey())
                .sorted()
                .collect(Collectors.joining(", "));
    }

    /** A case of a trial as both policies judge it. */
    TrialCasePage sideBySide(String id, String reference, Actor actor) {
        TrialView trial = TrialView.of(tryPolicies.find(id, actor));
        SideBySide both = tryPolicies.sideBySide(id, reference, actor);
        Sheet before = sheet(both.before());
        Sheet after = sheet(both.after());
        Map<String, String> old = lines(before);
        Map<String, String> now = lines(after);
        Map<String, String> titles = new LinkedHashMap<>();
        Stream.of(before, after)
                .flatMap(sheet -> sheet.groups().stream())
                .flatMap(group -> group.lines().stream())
                .forEach(line -> titles.putIfAbsent(line.id(), line.title()));
        Set<String> ids = new TreeSet<>(old.keySet());
        ids.addAll(now.keySet());
        List<TrialCasePage.Row> rows = new ArrayList<>();
        for (String line : ids) {
            String was = old.getOrDefault(line, "");
            String is = now.getOrDefault(line, "");
            String change =
                    was.isEmpty() ? "added" : is.isEmpty() ? "dropped" : was.equals(is) ? "the same" : "otherwise";
            rows.add(new TrialCasePage.Row(
                    titles.getOrDefault(line, line),
                    was.isEmpty() ? "not called for" : was,
                    is.isEmpty() ? "not called for" : is,
                    change));
        }
        rows.sort(Comparator.comparingInt(row -> CHANGED_FIRST.indexOf(row.change())));
        return new TrialCasePage(
                id, trial.policy(), reference, before.head().vehicle(), rows, side(before), side(after));
    }

    private Sheet sheet(JsonNode document) {
        Spoken spoken = new Spoken(words, Map.of(), document, ZoneOffset.UTC);
        return new ComposeSheet(words, document, Audience.WORKSHOP, ZoneOffset.UTC, spoken)
                .sheet(null, null, new SheetCharts(List.of(), Lettering.TEXT), Map.of());
    }

    private static Map<String, String> lines(Sheet sheet) {
        Map<String, String> lines = new LinkedHashMap<>();
        for (Sheet.Group group : sheet.groups()) {
            for (Sheet.Line line : group.lines()) {
                lines.put(
                        line.id(),
                        Stream.of(group.title(), line.quantity(), line.price(), line.standing())
                                .filter(part -> part != null && !part.isEmpty())
                                .collect(Collectors.joining(", ")));
            }
        }
        return lines;
    }

    private static TrialCasePage.Side side(Sheet sheet) {
        return new TrialCasePage.Side(
                sheet.fitness().name(),
                sheet.faults().stream()
                        .map(fault -> PlainWords.sentence(fault.place()) + ": " + fault.text())
                        .toList(),
                sheet.price() == null
                        ? List.of()
                        : sheet.price().totals().stream()
                                .map(total -> total.of() + ": " + total.gross())
                                .toList(),
                sheet.price() == null ? List.of() : sheet.price().labour(),
                sheet.price() == null ? List.of() : sheet.price().parts());
    }
}
