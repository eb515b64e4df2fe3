import { smokeTests } from './smoke.ts'
import { openWebKit } from './webkit.ts'

smokeTests(() => openWebKit(process.env['WEBKIT'] ?? 'WebKitWebDriver'))
