package org.axlecause.pages;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.shared.Page;
import org.axlecause.shared.SeeOther;
import org.jspecify.annotations.Nullable;

/** Pages of the desk: cases by whom they wait for, and the customer's decision. */
@Page
@Path("/desk")
@Produces(MediaType.TEXT_HTML)
public class DeskResource {

    private static final String SECTION = "desk";
    private static final String SOURCE = "/pages/desk";
    private static final List<String> BY_WAITING =
            List.of("scoped", "verified", "open", "in-work", "to-verify", "closed");

    private final ListCases listCases;
    private final ShowCase showCase;
    private final SendEntries sendEntries;
    private final Frames frames;
    private final Forms forms;
    private final CurrentActor current;

    DeskResource(
            ListCases listCases,
            ShowCase showCase,
            SendEntries sendEntries,
            Frames frames,
            Forms forms,
            CurrentActor current) {
        this.listCases = listCases;
        this.showCase = showCase;
        this.sendEntries = sendEntries;
        this.frames = frames;
        this.forms = forms;
        this.current = current;
    }

    @GET
    @Needs
    public String cases(
            @QueryParam("q") @Nullable String words,
            @QueryParam("status") @Nullable String status,
            @QueryParam("cursor") @Nullable String cursor) {
        CaseGroups groups = status == null || status.isBlank()
                ? listCases.groups(BY_WAITING, words, current.get())
                : listCases.page(status, words, cursor, current.get());
        return Pages.desk(frames.of(SECTION), groups).render();
    }

    @GET
    @Path("/{reference}")
    @Needs
    public String show(@PathParam("reference") String reference, @QueryParam("saved") @Nullable String saved) {
        return Pages.deskCase(frames.of(SECTION), showCase.show(reference, current.get()), saved)
                .render();
    }

    @POST
    @Path("/{reference}/decisions")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response decide(@PathParam("reference") String reference, MultivaluedMap<String, String> fields) {
        Form form = forms.received(fields);
        return send(reference, form, new ReadEntries(form).decisions(), "#decisions");
    }

    @POST
    @Path("/{reference}/closing")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response close(@PathParam("reference") String reference, MultivaluedMap<String, String> fields) {
        Form form = forms.received(fields);
        return send(reference, form, new ReadEntries(form).closed(), "");
    }

    private Response send(String reference, Form form, SendEntries.Entry entry, String where) {
        boolean fresh = sendEntries.send(form.sent(SOURCE, reference), List.of(entry), current.get());
        return SeeOther.to("/desk/" + reference + "?saved=" + (fresh ? "now" : "before") + where)
                .build();
    }
}
