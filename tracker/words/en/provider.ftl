### The mill's identity provider as the other way in.

provider-button = Sign in with your account of the mill
    .means = Leads to the mill's identity provider.
provider-silent = The mill's identity provider does not answer.
    .means = It cannot be reached, or what it says is no OpenID Connect.
    .hint = Try again in a moment; if it stays so, tell who looks after it.
provider-state = This sign-in was not begun here, or took more than { $minutes } minutes.
    .means = What came back from the provider belongs to no sign-in that this browser began.
    .hint = Begin again.
provider-refused = The mill's identity provider did not let you in.
    .means = The provider itself refused, or its code was used before or is too old.
    .hint = Begin again.
provider-token = What the mill's identity provider said of you does not hold, so nobody was signed in.
    .means = Signature, issuer, addressee, time or nonce of its token is wrong, or the name is missing.
    .hint = Begin again; if it stays so, tell who looks after the provider.
provider-role = { $person }, your account of the mill has no role here.
    .means = Somebody whom the provider knows is in none of the groups that have a role.
    .hint = Ask an administrator for the group that has it.
provider-name = The name { $person } belongs to another account here.
    .means = Somebody whom the provider knows has the name of an account with a password, or of somebody else's.
    .hint = Ask an administrator to leave that account to the identity provider, if it is yours.
provider-ended = The account of { $person } has ended.
    .means = Somebody whom the provider knows, and whose account here was ended.
    .hint = Ask an administrator.
provider-wait = Signing in went wrong too often from here. The next try is possible in { $seconds ->
        [one] one second
       *[other] { $seconds } seconds
    }.
    .means = Wrong answers of the provider came again and again from one address.
roles-by-provider = the roles of { $person } come from the mill's identity provider
    .means = Roles of an account without a password were to be changed here.
    .hint = change the groups there; they count from the next sign-in on

## The file that names the provider

provider-file = { $file } cannot be read as the settings of an identity provider: { $why }
    .means = The file is not there, or is no TOML.
provider-setting = { $file }: { $key } { $problem ->
        [missing] is missing
        [text] is no text
        [groups] is no list of groups
        [unknown] is no setting; there are { $known }
        [role] is no role; the roles are { $known }
       *[address] has to begin with https://, since passwords and names travel there
    }
    .means = A line of that file cannot be.
provider-file-open = { $file } holds a secret and can be read by everybody on this machine
    .means = The rights of the file that names the provider are too wide.
    .terminal = `chmod o-r FILE` takes it away
provider-library = signing in by an identity provider takes the library Authlib, which is not installed
    .means = The extra of the installation is missing.
    .terminal = `pip install 'beamslot[provider]'` brings it
